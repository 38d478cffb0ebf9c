import type { FitResult, LengthFormat, PartId } from '@dryfit/engine';
import { hoverDrawing, sceneOf, svgFile } from '@dryfit/output';

/** Editors cut what a hover says at a hundred thousand characters: a picture takes at most this much of them. */
const MOST = 48_000;

/** A small drawing of a part with its slots, as the address of an image; undefined for one that would be too long. */
export function partPicture(result: FitResult, part: PartId, format: LengthFormat): string | undefined {
  const { fit } = result;
  const parts = fit.parts.filter(({ id }) => id === part);
  if (parts.every(({ box }) => box === undefined)) return undefined;
  // Nothing is drawn but what has to do with the part.
  const joints = fit.joints.filter(({ entering, host }) => entering === part || host === part);
  const scene = sceneOf({ ...result, fit: { ...fit, parts, joints } }, [], format);
  const address = `data:image/svg+xml;base64,${base64(svgFile(hoverDrawing(scene, part)))}`;
  return address.length > MOST ? undefined : address;
}

/** The same in Node and in a browser's worker. */
function base64(text: string): string {
  const bytes = new TextEncoder().encode(text);
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
}
