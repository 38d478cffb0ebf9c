export { type Element, element } from './element.js';
export { type ElevationOptions, elevation } from './elevation/elevation.js';
export { type ExplodedOptions, exploded } from './exploded/exploded.js';
export { USUAL_VIEW, type View } from './exploded/view.js';
export { svgFile } from './file.js';
export { hoverDrawing } from './hover.js';
export { sceneOf } from './scene/scene-of.js';
export { sceneSteps } from './scene/steps.js';
export type {
  Scene,
  SceneBox,
  SceneCut,
  SceneFinding,
  SceneJoint,
  SceneMark,
  ScenePart,
  SceneStep,
  Shape,
  Triple,
} from './scene.js';
export { stepDrawing } from './step/step.js';
export { drawingStyle, printedStyle } from './style.js';
export { toSvg } from './svg.js';
export { type Twin, type TwinRow, twinOf } from './twin.js';
