import { proveOnDrawing } from '../../app/drawing/proveOnDrawing.ts';
import { done } from '../../core/problem.ts';
import { paintPicture } from './paintPicture.ts';
import { serveCalls } from './serveCalls.ts';

serveCalls({
  prove: (drawing, tell) => {
    const proof = proveOnDrawing(drawing, tell);
    if (!proof.ok) return proof;
    const { picture, ...rest } = proof.value;
    return done({ ...rest, picture: paintPicture(picture) });
  },
});
