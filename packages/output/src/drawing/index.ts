export { type Element, element } from './element.js';
export { elevation } from './elevation/elevation.js';
export { exploded } from './exploded/exploded.js';
export { USUAL_VIEW, type View } from './exploded/view.js';
export { svgFile } from './file.js';
export { sceneOf } from './scene/scene-of.js';
export type { Scene, SceneBox, SceneCut, SceneFinding, SceneJoint, ScenePart, Shape, Triple } from './scene.js';
export { drawingStyle } from './style.js';
export { toSvg } from './svg.js';
