/** The four places of a bed as one sees them who stands before the machine. */
export const bedPlaces = ['front-left', 'front-right', 'back-left', 'back-right'] as const;

export type BedPlace = (typeof bedPlaces)[number];

/** What a cell cut there is called by, before its number. */
export const placeInitials: Readonly<Record<BedPlace, string>> = {
  'front-left': 'FL',
  'front-right': 'FR',
  'back-left': 'BL',
  'back-right': 'BR',
};

/** Two places that share an edge of the bed. */
export const bedSides = {
  front: ['front-left', 'front-right'],
  back: ['back-left', 'back-right'],
  left: ['front-left', 'back-left'],
  right: ['front-right', 'back-right'],
} as const satisfies Readonly<Record<string, readonly [BedPlace, BedPlace]>>;

export type BedSide = keyof typeof bedSides;

export const bedSideNames: readonly BedSide[] = ['front', 'back', 'left', 'right'];

/** One of each place. */
export const forEachPlace = <T>(make: (place: BedPlace) => T): Readonly<Record<BedPlace, T>> => ({
  'front-left': make('front-left'),
  'front-right': make('front-right'),
  'back-left': make('back-left'),
  'back-right': make('back-right'),
});
