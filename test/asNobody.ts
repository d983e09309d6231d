/** Does the work as a user that owns nothing, since the superuser may write where nobody may. */
export const asNobody = async <T>(work: () => Promise<T>): Promise<T> => {
  const { geteuid, seteuid } = process;
  if (geteuid?.() !== 0 || seteuid === undefined) return work();
  seteuid(65_534);
  try {
    return await work();
  } finally {
    seteuid(0);
  }
};
