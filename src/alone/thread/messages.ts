import type { QuestionOf, SumName, SumOutcome } from '../../app/sums/model.ts';
import type { StoredChange } from '../../app/ports/storedChange.ts';

/** What the page sends to the thread where the workshop is kept. */
export type ToPlace =
  | { readonly kind: 'ask'; readonly id: number; readonly asked: PlaceAsked }
  /** Whoever asked has gone. */
  | { readonly kind: 'gone'; readonly id: number }
  | ({ readonly kind: 'sum-made' } & SumMade);

/** A sum that the place wants made: the page has another thread for it. */
export interface SumAsked {
  readonly id: number;
  readonly name: SumName;
  readonly question: QuestionOf<SumName>;
}

export interface SumMade {
  readonly id: number;
  readonly outcome: SumOutcome<SumName>;
}

/** A request, as a server would get it. */
export interface PlaceAsked {
  readonly method: string;
  /** Path and query. */
  readonly address: string;
  /** What the body is; absent where there is none. */
  readonly contentType?: string;
  readonly body?: string | Uint8Array;
  /** The name that was given on this page. */
  readonly by?: string;
}

/** An answer, as a server would give it. */
export interface PlaceReply {
  readonly status: number;
  readonly contentType: string;
  readonly disposition?: string;
  readonly body: string | Uint8Array;
}

/** What comes back. */
export type FromPlace =
  | { readonly kind: 'reply'; readonly id: number; readonly reply: PlaceReply }
  | { readonly kind: 'news'; readonly change: StoredChange }
  | ({ readonly kind: 'sum' } & SumAsked)
  | { readonly kind: 'sum-unwanted'; readonly id: number };
