import { wallList, type WallLine } from '../../../core/standing/wallList.ts';
import { inventedText, shellText, wallListText as words } from '../../../words/texts.ts';
import { Action, ActionLink } from '../../parts/action/Action.tsx';
import { DownloadLink } from '../../parts/action/DownloadLink.tsx';
import { Page } from '../../parts/page/Page.tsx';
import { Scrolls } from '../../parts/page/Scrolls.tsx';
import { pages } from '../../state/pages.ts';
import { useMachines } from '../../state/machines.ts';
import { useBook } from '../../state/queries.ts';
import { unitsInAddress } from '../../state/units.ts';
import { addressOf } from '../../../wire/route.ts';
import { wallListAddress } from '../../../wire/laterAddresses.ts';
import { useMarkTests } from '../marks/useMarkTests.ts';
import { useKerfTests } from '../kerf/useKerfTests.ts';
import { bookText } from '../../../words/texts.ts';
import './wall.css';

/** As many as the printed page has. */
const most = 200;

/** Kept settings by machine, to be printed and hung up. */
export const WallScreen = () => {
  const book = useBook({ limit: most });
  const { data: kerfs, isPending } = useKerfTests();
  const marks = useMarkTests();
  const { all, isPending: isMachinePending } = useMachines();
  const machines =
    book.data === undefined || isPending || marks.isPending || isMachinePending
      ? undefined
      : wallList(book.data.entries, {
          kerfTests: kerfs?.tests ?? [],
          markTests: marks.data?.tests ?? [],
          machines: all,
        });
  return (
    <Page title={words.title} lead={words.lead} width="wide">
      <div className="actions wall-screen-only">
        <Action kind="strong" onPress={() => print()}>
          {bookText.print}
        </Action>
        <DownloadLink
          href={addressOf(wallListAddress, {}, { units: unitsInAddress() })}
          fileName="wall-list.pdf"
        >
          {words.pdf}
        </DownloadLink>
        <ActionLink href={pages.book}>{bookText.back}</ActionLink>
      </div>
      <p>
        <strong>{words.care}</strong>
      </p>
      {machines === undefined ? (
        <p>{shellText.loading}</p>
      ) : machines.length === 0 ? (
        <p>{words.empty}</p>
      ) : (
        machines.map(({ name, lines }) => (
          <section key={name ?? ''} className="wall">
            <h2>{name ?? words.unnamed}</h2>
            <Scrolls label={name ?? words.unnamed}>
              <table>
                <thead>
                  <tr>
                    {words.columns.map((column) => (
                      <th key={column} scope="col">
                        {column}
                      </th>
                    ))}
                  </tr>
                </thead>
                <tbody>
                  {lines.map((line) => (
                    <Line key={line.entry.id} line={line} />
                  ))}
                </tbody>
              </table>
            </Scrolls>
          </section>
        ))
      )}
    </Page>
  );
};

const Line = ({ line }: { readonly line: WallLine }) => {
  const { entry, kerf } = line;
  const [date, code] = words.kept(entry);
  return (
    <tr>
      <td>{inventedText.stock(words.sheet(entry.holdsFor), entry.isExample)}</td>
      <td>
        <strong>{words.cut(line)}</strong>
      </td>
      <td>{words.air(line)}</td>
      <td>{words.score(line)}</td>
      <td>{words.engrave(line)}</td>
      <td>{words.kerf(kerf)}</td>
      <td>{words.promise(line)}</td>
      <td>
        {date} <span className="figure-text">{code}</span>
      </td>
    </tr>
  );
};
