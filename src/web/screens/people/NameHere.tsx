import { useState } from 'react';
import { peopleText as words, roleText } from '../../../words/texts.ts';
import { Section } from '../../parts/page/Page.tsx';
import { TextLine } from '../../parts/quantity/TextLine.tsx';
import { keepNameHere, nameHere } from '../../state/nameHere.ts';
import { usePairing } from '../../state/queries.ts';

/** Under which name things are read, counted and kept from this device. A phone's was given when it was let in. */
export const NameHere = () => {
  const { data } = usePairing();
  const [name, setName] = useState(nameHere);
  if (data === undefined || !data.letIn) return null;
  return (
    <Section title={words.title} id="name">
      {data.desk ? (
        <TextLine
          label={words.name}
          hint={words.hint}
          value={name}
          onChange={(typed) => {
            setName(typed);
            keepNameHere(typed);
          }}
        />
      ) : data.name === undefined ? null : (
        <p>{words.asPhone(data.name)}</p>
      )}
      {data.desk || data.role === undefined ? null : (
        <p>{words.phoneMay(roleText.may[data.role])}</p>
      )}
    </Section>
  );
};
