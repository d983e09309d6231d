import { fetchAhead } from './state/fetchAhead.ts';
import { startPage } from './startPage.tsx';

startPage();
fetchAhead();
