const here = (file: string): string => new URL(`./${file}.js`, import.meta.url).href;

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
].map(here);

/** Those where all cards are cut from one board, for which the speed is meant. */
export const oneBoardWorkshops: readonly string[] = [
  'oneBoard',
  'oneBoardHeavyTails',
  'oneBoardOfMany',
].map(here);
