/** Where each route of `trailApi` stands; by itself, since no first screen asks for them. */
export const trailAddresses = {
  listSettingChanges: { method: 'GET', path: '/api/setting-changes', least: 'reads-and-counts' },
  takeBackSettingChange: {
    method: 'POST',
    path: '/api/setting-changes/:changeId/take-back',
    least: 'decides',
  },
} as const;
