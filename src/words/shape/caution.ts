/** What a person is about to do. `always` goes with every one of them. */
export const cautionActs = [
  'always',
  'unattended',
  'fire',
  'card',
  'beforeCut',
  'injury',
  'airOff',
  'slowThick',
  'newMaterial',
  'current',
  'focus',
  'airComparison',
  'photo',
  'timedJobs',
  'marking',
] as const;

export type CautionAct = (typeof cautionActs)[number];

/** One caution, shown where the act is. */
export interface Caution {
  readonly code: string;
  /** Shown even where there is room for a few lines only. */
  readonly essential: boolean;
  readonly sentence: string;
}
