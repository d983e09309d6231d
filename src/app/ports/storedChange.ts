/** Something stored has changed. No study: look at everything again. */
export interface StoredChange {
  readonly studyId?: string;
  /** Absent: the study is gone. */
  readonly revision?: number;
  /** A phone that is let in no longer. */
  readonly phoneOut?: string;
  /** A phone that may do more or less from now on, or is called otherwise. */
  readonly phoneChanged?: string;
}
