import type { MachineTestRead } from '../../app/machine/readMachineTest.ts';
import { bedPlaces } from '../../core/bed/place.ts';
import { cornersText } from '../../words/texts.ts';
import type { api, ReplyOf } from '../../wire/api.ts';

/** A reading of the four corners as it is sent. */
export const bedTestSaid = ({
  test,
  says,
}: MachineTestRead<'bed-test'>): ReplyOf<typeof api.getBedTest> => {
  const { verdict, effects, exact, suspects } = says.value;
  return {
    test,
    verdict: verdict.kind,
    sentence: cornersText.verdict(verdict),
    places: bedPlaces.map((place) => {
      const { slowerPct, lowPct, highPct, chanceWeak } = effects.places[place];
      const { p, pOfFour } = exact[place];
      return { place, slowerPct, lowPct, highPct, chanceWeak, exactP: p, exactPOfFour: pOfFour };
    }),
    suspects: suspects.map((suspect) => {
      const [name, how] = cornersText.suspects[suspect];
      return { name, how };
    }),
  };
};
