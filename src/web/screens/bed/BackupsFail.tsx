import { bedText as words } from '../../../words/texts.ts';
import { Notice } from '../../parts/notice/Notice.tsx';
import { useBackups } from '../../state/queries.ts';

/** Says that backups are not made, why, and how old the last one is. */
export const BackupsFail = () => {
  const { data } = useBackups();
  if (data?.failing === undefined) return null;
  const { message, remedy } = data.failing.said;
  return (
    <Notice tone="care" title={words.backupsFail}>
      <p>
        {message} {remedy}
      </p>
      <p>{data.lastAt === undefined ? words.noBackup : words.lastBackup(data.lastAt)}</p>
    </Notice>
  );
};
