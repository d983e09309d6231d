import { remark, type Finding } from '../core/filecheck/toolpath.ts';

/** Parts of a file that were not read, counted by what they are. */
export class Unread {
  readonly #counts = new Map<string, number>();

  add(what: string, count = 1): void {
    // A file of a hundred thousand kinds of nonsense is told of as one.
    const kind = this.#counts.size < mostKinds || this.#counts.has(what) ? what : 'others';
    this.#counts.set(kind, (this.#counts.get(kind) ?? 0) + count);
  }

  findings(): readonly Finding[] {
    return [...this.#counts].map(([what, count]) => remark('check-part-not-read', { what, count }));
  }
}

const mostKinds = 20;
