import { photoText as words } from '../../../words/texts.ts';
import { SureAction } from '../../parts/action/SureAction.tsx';
import {
  photoAddress,
  useCardPhotos,
  useKeepPhotos,
  type CardOfPhotos,
} from '../../state/cardPhotos.ts';
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
          <a href={photoAddress(card, side, keptAt)} target="_blank" rel="noreferrer">
            <img
              src={photoAddress(card, side, keptAt)}
              alt={words.kept(side, code)}
              width={widthPx}
              height={heightPx}
              loading="lazy"
            />
          </a>
          <SureAction ask={words.removePhotoAsk} onPress={() => void remove(side)}>
            {words.removePhoto(side)}
          </SureAction>
        </li>
      ))}
    </ul>
  );
};
