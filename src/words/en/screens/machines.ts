/** The machines of a workshop: which one is meant, one more, and what was changed on one. */
export const machinesText = {
  which: 'Which machine?',
  cutOn: 'On which machine is it cut?',
  nameOf: ({ isExample, machine }: { isExample: boolean; machine: { name?: string } }) =>
    machine.name ?? (isExample ? 'The invented machine' : 'Machine without a name'),
  invented:
    'This machine is invented. It belongs to the example and goes with it; none of its figures reaches a sheet of yours.',
};
