/** Something stored has changed. No study: look at everything again. */
export interface StoredChange {
  readonly studyId?: string;
  /** Absent: the study is gone. */
  readonly revision?: number;
}
