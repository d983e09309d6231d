import { Field } from '../quantity/Field.tsx';
import '../file/file.css';
import './photo-parts.css';

export interface PhotoPickProps {
  readonly labels: { readonly take: string; readonly choose: string };
  readonly onPick: (photo: File) => void;
}

/** A photograph: on a phone taken at once by its camera, or chosen from those that there are; at a desk chosen. */
export const PhotoPick = ({ labels, onPick }: PhotoPickProps) => (
  <div className="photo-pick">
    <div className="photo-pick-camera">
      <PhotoBox label={labels.take} fromCamera onPick={onPick} />
    </div>
    <PhotoBox label={labels.choose} onPick={onPick} />
  </div>
);

interface PhotoBoxProps {
  readonly label: string;
  readonly fromCamera?: boolean;
  readonly onPick: (photo: File) => void;
}

const PhotoBox = ({ label, fromCamera = false, onPick }: PhotoBoxProps) => (
  <Field label={label}>
    {(box) => (
      <input
        {...box}
        type="file"
        className="file-pick"
        accept="image/*"
        {...(fromCamera ? { capture: 'environment' as const } : {})}
        onChange={({ target }) => {
          const photo = target.files?.[0];
          if (photo !== undefined) onPick(photo);
        }}
      />
    )}
  </Field>
);
