import { useState } from 'react';
import { useQueryClient } from '@tanstack/react-query';
import { useLocation } from 'wouter';
import { exampleKeptId } from '../../../core/virtual/exampleKeptId.ts';
import { pageApi } from '../../../wire/pageApi.ts';
import { shellText as words } from '../../../words/texts.ts';
import { Action } from '../../parts/action/Action.tsx';
import { call } from '../../state/call.ts';
import { pageAt, pages } from '../../state/pages.ts';

/** One click to an invented workshop that has been at it for a while. */
export const ExampleDoor = () => {
  const [, goTo] = useLocation();
  const cache = useQueryClient();
  const [isOpening, setOpening] = useState(false);
  // By hand: the first view leaves what follows changes to the parts that come later.
  const open = async (): Promise<void> => {
    setOpening(true);
    const opened = await call(pageApi.openExample);
    setOpening(false);
    if (!opened.ok) return;
    const home = opened.value;
    cache.setQueryData(['home'], home);
    void cache.invalidateQueries({ queryKey: ['book'] });
    // Beside work of one's own the bed shows that work; the example is then entered by its kept setting.
    goTo(
      home.latest?.study.isExample === false
        ? pageAt(pages.entry, { id: exampleKeptId })
        : pages.bed,
    );
  };
  return (
    <div className="actions">
      <Action
        kind="quiet"
        calls={pageApi.openExample}
        onPress={() => void open()}
        isDisabled={isOpening}
      >
        {words.exampleShow}
      </Action>
    </div>
  );
};
