import { api } from './api.ts';
import { apiOfFiles } from './apiOfFiles.ts';
import { checkApi } from './checkApi.ts';
import { compareApi } from './compareApi.ts';
import { kerfApi } from './kerfApi.ts';
import { markApi } from './markApi.ts';
import { orderApi } from './order.ts';
import { photoApi } from './photo.ts';
import type { Route } from './route.ts';
import { scoreApi } from './score.ts';
import { trailApi } from './trailApi.ts';
import { watchApi } from './watch.ts';

/** Every route by its name, for whoever describes or tries them all. */
export const allRoutes: Readonly<Record<string, Route>> = {
  ...api,
  ...apiOfFiles,
  ...checkApi,
  ...compareApi,
  ...kerfApi,
  ...markApi,
  ...orderApi,
  ...photoApi,
  ...scoreApi,
  ...trailApi,
  ...watchApi,
};
