// By themselves, since no first screen asks for them.

/** Where each route of `photoApi` stands. */
export const photoAddresses = {
  listPhotos: {
    method: 'GET',
    path: '/api/studies/:id/cards/:code/photos',
    least: 'reads-and-counts',
  },
  keepPhoto: {
    method: 'PUT',
    path: '/api/studies/:id/cards/:code/photos/:side',
    least: 'reads-and-counts',
  },
  cardPhoto: {
    method: 'GET',
    path: '/api/studies/:id/cards/:code/photos/:side',
    least: 'reads-and-counts',
  },
  removePhoto: {
    method: 'DELETE',
    path: '/api/studies/:id/cards/:code/photos/:side',
    least: 'decides',
  },
  gradeCard: {
    method: 'GET',
    path: '/api/studies/:id/cards/:code/grade',
    least: 'reads-and-counts',
  },
  listSettingPhotos: { method: 'GET', path: '/api/book/:id/photos', least: 'reads-and-counts' },
  keepSettingPhoto: { method: 'PUT', path: '/api/book/:id/photos/:subject', least: 'decides' },
  settingPhoto: { method: 'GET', path: '/api/book/:id/photos/:subject', least: 'reads-and-counts' },
  removeSettingPhoto: { method: 'DELETE', path: '/api/book/:id/photos/:subject', least: 'decides' },
} as const;

/** Where each route of `kerfApi` stands. */
export const kerfAddresses = {
  kerfCardFile: { method: 'GET', path: '/api/kerf-card/card.:kind', least: 'reads-and-counts' },
  calcKerf: { method: 'POST', path: '/api/calc/kerf', least: 'reads-and-counts' },
  growDrawing: { method: 'POST', path: '/api/calc/grow', least: 'reads-and-counts' },
} as const;

/** Where each route of `markApi` stands. */
export const markAddresses = {
  markStripFile: {
    method: 'GET',
    path: '/api/marking-strip/strip.:kind',
    least: 'reads-and-counts',
  },
  calcMarks: { method: 'POST', path: '/api/calc/marks', least: 'reads-and-counts' },
  calcShades: { method: 'POST', path: '/api/calc/shades', least: 'reads-and-counts' },
} as const;

/** Where the kept settings for the wall stand. */
export const wallListAddress = {
  method: 'GET',
  path: '/api/wall-list.pdf',
  least: 'reads-and-counts',
} as const;

/** Where each route of `scoreApi` stands. */
export const scoreAddresses = {
  scorePromises: { method: 'GET', path: '/api/score', least: 'reads-and-counts' },
  exportCounts: { method: 'GET', path: '/api/export/counts.json', least: 'reads-and-counts' },
} as const;

/** Where each route of `watchApi` stands. */
export const watchAddresses = {
  watchEntry: { method: 'GET', path: '/api/book/:id/watch', least: 'reads-and-counts' },
  cutStrip: { method: 'POST', path: '/api/book/:id/strips', least: 'decides' },
} as const;
