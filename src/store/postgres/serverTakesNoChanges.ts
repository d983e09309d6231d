/** No server that was asked takes what is written: each is a copy of another. */
export class ServerTakesNoChanges extends Error {
  constructor() {
    super('no server takes changes');
    this.name = 'ServerTakesNoChanges';
  }
}
