/** Air assist. */
export const airText = {
  air: 'Air',
  kinds: {
    unsaid: 'as usual',
    off: 'off',
    pump: 'a pump, no gauge',
    gauge: 'pressure at the gauge',
  },
  pressure: 'Pressure at the regulator’s gauge',
  offCare:
    'Air off lets flames stand and soots the lens: only small shapes, someone watching every second, extinguisher in hand.',
};
