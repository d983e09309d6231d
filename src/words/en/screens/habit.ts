/** What the workshop cuts it with now. */
export const habitText = {
  speed: 'Speed',
  power: 'Power setting',
  comesOut: 'Does it always come out?',
  comes: { always: 'always', nearly: 'nearly always', 'often-not': 'often not' },
  takeBack: 'Take it back',
};
