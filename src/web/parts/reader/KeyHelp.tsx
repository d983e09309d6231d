import { readingText as words } from '../../../words/texts.ts';
import { More } from '../more/More.tsx';

/** The keys of the reader, for those who have some. */
export const KeyHelp = () => (
  <div className="reader-keys">
    <More title={words.keys}>
      <dl className="reader-keylist">
        {words.keyList.map(([key, does]) => (
          <div key={key}>
            <dt>{key}</dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </More>
  </div>
);
