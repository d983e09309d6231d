import { inventedText as words } from '../../../words/texts.ts';
import './invented.css';

/** Says that what stands on this screen belongs to the example; nothing where it is the workshop's own. */
export const Invented = ({ is }: { readonly is: boolean }) =>
  is ? (
    <p className="invented">
      <strong>{words.mark}</strong> {words.more}
    </p>
  ) : null;
