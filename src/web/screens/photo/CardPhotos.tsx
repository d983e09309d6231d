import { photoText as words } from '../../../words/texts.ts';
import { SureAction } from '../../parts/action/SureAction.tsx';
import {
  photoAddress,
  useCardPhotos,
  useKeepPhotos,
  type CardOfPhotos,
} from '../../state/cardPhotos.ts';
import { usePictureAt } from '../../state/workshopFile.ts';
import './photo.css';

/** The photographs kept with a card, small; each opens large. Nothing where there are none. */
export const CardPhotos = ({ id, code }: CardOfPhotos) => {
  const card = { id, code };
  const { data } = useCardPhotos(card);
  const { remove } = useKeepPhotos(card);
  if (data === undefined || data.photos.length === 0) return null;
  return (
    <ul className="photo-kept">
      {data.photos.map(({ side, keptAt, widthPx, heightPx }) => (
        <li key={side}>
          <Kept
            address={photoAddress(card, side, keptAt)}
            alt={words.kept(side, code)}
            widthPx={widthPx}
            heightPx={heightPx}
          />
          <SureAction ask={words.removePhotoAsk} onPress={() => void remove(side)}>
            {words.removePhoto(side)}
          </SureAction>
        </li>
      ))}
    </ul>
  );
};

interface KeptProps {
  readonly address: string;
  readonly alt: string;
  readonly widthPx: number;
  readonly heightPx: number;
}

const Kept = ({ address, alt, widthPx, heightPx }: KeptProps) => {
  const shown = usePictureAt(address);
  return (
    <a href={shown} target="_blank" rel="noreferrer">
      <img src={shown} alt={alt} width={widthPx} height={heightPx} loading="lazy" />
    </a>
  );
};
