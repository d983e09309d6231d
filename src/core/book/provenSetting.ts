import type { Author } from '../author.ts';
import type { Setting } from '../machine/setting.ts';
import type { PromiseWish } from '../reading/promise.ts';
import type { Aim } from '../cutmodel/aims.ts';

/** A setting, what it holds for, its promise, where it came from and who kept it. */
export interface ProvenSetting extends Author {
  readonly version: 1;
  readonly id: string;
  /** Four characters, printed on the shelf label. */
  readonly code: string;
  readonly isExample: boolean;
  /** ISO 8601, UTC. */
  readonly keptAt: string;
  readonly setting: Setting;
  readonly aim: Aim;
  readonly promise: PromiseWish;
  /** What the model said when it was kept: of 100 sound parts, and how sure of the promise. */
  readonly outOf100Mean: number;
  readonly surePct: number;
  readonly holdsFor: {
    /** Absent: from before machines were things of their own, or nobody knows. */
    readonly machineId?: string;
    /** Its name, where it has one. */
    readonly machine?: string;
    readonly material: string;
    /** A person has looked at what it is, where the name alone leaves that open. */
    readonly materialKnown?: true;
    readonly nominalThicknessMm: number;
    readonly measuredThicknessMm?: number;
    readonly batch?: string;
    readonly sheet?: string;
  };
  readonly cameFrom: {
    readonly studyId: string;
    readonly cardCodes: readonly string[];
    readonly cellCount: number;
    readonly partsTallied: number;
    readonly habit: boolean;
  };
  /** Why a person kept a setting that the tool did not recommend, e.g. above rated current. */
  readonly personsChoice?: string;
  readonly note?: string;
}
