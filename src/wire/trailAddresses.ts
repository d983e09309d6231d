/** Where each route of `trailApi` stands; by itself, since no first screen asks for them. */
export const trailAddresses = {
  listSettingChanges: { method: 'GET', path: '/api/setting-changes' },
  takeBackSettingChange: { method: 'POST', path: '/api/setting-changes/:changeId/take-back' },
} as const;
