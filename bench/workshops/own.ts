/** The project's own workshops: three well-behaved ones first, then the nasty ones. */
export const ownWorkshops: readonly string[] = [
  'powerLaw',
  'bentLaw',
  'logisticScatter',
  'heavyTails',
  'gluePockets',
  'misreadCells',
  'tiltedBeam',
  'wedgeSheet',
  'driftingTube',
  'sheetShifts',
  'growingScatter',
  'wrongPrior',
].map((file) => new URL(`./${file}.js`, import.meta.url).href);
