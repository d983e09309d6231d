import { reachBy } from '../../web/state/reach.ts';
import { startPage } from '../../web/startPage.tsx';
import { followAnchors, hashPlaces } from './hashPlaces.ts';
import { startThread } from './startThread.ts';
import { within } from './within.ts';

// The whole workshop in one page: no server, and nothing is fetched from anywhere.
reachBy(within(startThread));
followAnchors();
startPage({ places: hashPlaces });
