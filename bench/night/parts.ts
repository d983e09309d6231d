import { ezdxfPart } from '../files/ezdxfPart.ts';
import { ordersPart } from '../counted/ordersPart.ts';
import { casesPart } from './casesPart.ts';
import { growthPart } from '../grown/growthPart.ts';
import { scalePart } from '../scale/scalePart.ts';
import { firstViewPart } from '../server/firstViewPart.ts';
import { faultsPart } from '../server/faultsPart.ts';
import { filesPart } from '../files/filesPart.ts';
import { hostilePart } from '../hostile/hostilePart.ts';
import { mutantsPart } from '../mutation/mutantsPart.ts';
import { killsPart } from '../server/killsPart.ts';
import { meanwhilePart } from '../server/meanwhilePart.ts';
import { requestsPart } from '../server/requestsPart.ts';
import { sumsPart } from '../sums/sumsPart.ts';
import { databasePart } from './databasePart.ts';
import { pagePart } from './pagePart.ts';
import { photoPart } from '../photo/photoPart.ts';
import type { NightPart } from './nightPart.ts';

/** All parts of the night, in the order of running. One more is one line here. */
export const nightParts: readonly NightPart[] = [
  filesPart,
  ezdxfPart,
  killsPart,
  faultsPart,
  requestsPart,
  databasePart,
  pagePart,
  meanwhilePart,
  hostilePart,
  sumsPart,
  ordersPart,
  growthPart,
  scalePart,
  firstViewPart,
  photoPart,
  casesPart,
  mutantsPart,
];
