/** What can be the matter with what is said of a machine. */
export const machineCodes = [
  'tube-reading-impossible',
  'tube-readings-too-few',
  'tube-never-fired',
  'caustic-too-few-positions',
  'caustic-no-waist',
] as const;

export type MachineCode = (typeof machineCodes)[number];
