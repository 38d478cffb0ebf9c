import type { Scene, Shape } from '@dryfit/output';

/** What is drawn under an id. */
export function shapeIn(scene: Scene, shape: string): Shape | undefined {
  for (const part of scene.parts) {
    if (part.shape === shape) return part;
    const cut = part.cuts.find((one) => one.shape === shape);
    if (cut) return cut;
  }
  return scene.joints.find((joint) => joint.shape === shape);
}
