import { usePictureAt } from '../../state/workshopFile.ts';

export interface KeptPictureProps {
  readonly address: string;
  readonly alt: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

/** A photograph that is kept, small; it opens large. */
export const KeptPicture = ({ address, alt, widthPx, heightPx }: KeptPictureProps) => {
  const shown = usePictureAt(address);
  return (
    <a href={shown} target="_blank" rel="noreferrer">
      <img src={shown} alt={alt} width={widthPx} height={heightPx} loading="lazy" />
    </a>
  );
};
