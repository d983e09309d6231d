import { shellText as words } from '../../words/texts.ts';
import { ActionLink } from '../parts/action/Action.tsx';
import { Page } from '../parts/page/Page.tsx';
import { pages } from '../state/pages.ts';

/** An address at which nothing stands. */
export const NotFoundScreen = () => (
  <Page title={words.notFound} lead={words.notFoundMore}>
    <div className="actions">
      <ActionLink kind="strong" href={pages.start}>
        {words.toStart}
      </ActionLink>
    </div>
  </Page>
);
