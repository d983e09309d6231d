import { pagePhotoApi } from '../../../wire/pageLaterApi.ts';
import { photoText as words } from '../../../words/texts.ts';
import { SureAction } from '../../parts/action/SureAction.tsx';
import {
  photoAddress,
  useCardPhotos,
  useKeepPhotos,
  type CardOfPhotos,
} from '../../state/cardPhotos.ts';
import { KeptPicture } from './KeptPicture.tsx';
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
          <KeptPicture
            address={photoAddress(card, side, keptAt)}
            alt={words.kept(side, code)}
            widthPx={widthPx}
            heightPx={heightPx}
          />
          <SureAction
            calls={pagePhotoApi.removePhoto}
            ask={words.removePhotoAsk}
            onPress={() => void remove(side)}
          >
            {words.removePhoto(side)}
          </SureAction>
        </li>
      ))}
    </ul>
  );
};
