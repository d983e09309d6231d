import { shellText as words } from '../../words/en/screens/shell.ts';
import { ActionLink } from '../parts/action/Action.tsx';
import { Page } from '../parts/page/Page.tsx';

/** An address at which nothing stands. */
export const NotFoundScreen = () => (
  <Page title={words.notFound} lead={words.notFoundMore}>
    <div className="actions">
      <ActionLink kind="strong" href="/">
        {words.toStart}
      </ActionLink>
    </div>
  </Page>
);
