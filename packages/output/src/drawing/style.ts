/**
 * How a drawing looks, as a style sheet. Every pen and ground is a variable with a value for print, so that a
 * screen gives it its own: `--dryfit-ink`, `--dryfit-paper`, `--dryfit-shade-x`, `-y` and `-z` (faces across that
 * axis), `--dryfit-cut`, `--dryfit-faint`, `--dryfit-font`.
 */
export const drawingStyle = `
.dryfit-drawing{color:var(--dryfit-ink,#000);fill:none;stroke:none;font-family:var(--dryfit-font,Helvetica,Arial,sans-serif);font-size:14px}
.dryfit-drawing text{fill:var(--dryfit-ink,#000);stroke:none}
.dryfit-drawing text,.dryfit-drawing .leader,.dryfit-drawing .extension,.dryfit-drawing .ground{pointer-events:none}
.dryfit-drawing .title{font-size:18px;font-weight:bold}
.dryfit-drawing .warning{font-weight:bold}
.dryfit-drawing .face{fill:var(--dryfit-paper,#fff);stroke-width:.6}
.dryfit-drawing .across-x{fill:var(--dryfit-shade-x,#e4e4e4);stroke:var(--dryfit-shade-x,#e4e4e4)}
.dryfit-drawing .across-y{fill:var(--dryfit-shade-y,#f2f2f2);stroke:var(--dryfit-shade-y,#f2f2f2)}
.dryfit-drawing .across-z,.dryfit-drawing .across-bevel{fill:var(--dryfit-shade-z,#fff);stroke:var(--dryfit-shade-z,#fff)}
.dryfit-drawing .edge{stroke:var(--dryfit-ink,#000);stroke-width:1.1;stroke-linecap:round;stroke-linejoin:round}
.dryfit-drawing .opening{fill:var(--dryfit-cut,#555);stroke:var(--dryfit-ink,#000);stroke-width:.6}
.dryfit-drawing .groove,.dryfit-drawing .rebate,.dryfit-drawing .housing{fill:var(--dryfit-recess,#bbb)}
.dryfit-drawing .leader{stroke:var(--dryfit-faint,#555);stroke-width:.7}
.dryfit-drawing .dot{fill:var(--dryfit-ink,#000);stroke:var(--dryfit-paper,#fff);stroke-width:.8}
.dryfit-drawing .hidden .leader{stroke-dasharray:4 3}
.dryfit-drawing .hidden .dot{fill:var(--dryfit-paper,#fff);stroke:var(--dryfit-ink,#000)}
.dryfit-drawing .side{font-style:italic}
.dryfit-drawing .ground{fill:var(--dryfit-paper,#fff)}
.dryfit-drawing .outline{stroke:var(--dryfit-ink,#000);stroke-width:1.6}
.dryfit-drawing .strip{fill:var(--dryfit-shade-y,#f2f2f2);stroke-width:1}
.dryfit-drawing .behind{stroke:var(--dryfit-ink,#000);stroke-width:1;stroke-dasharray:6 4}
.dryfit-drawing.exploded .behind{stroke-width:.55;stroke-dasharray:2.4 1.6;pointer-events:all}
.dryfit-drawing .footprint{stroke:var(--dryfit-faint,#555);stroke-width:.8;stroke-dasharray:3 3}
.dryfit-drawing .middle{stroke:var(--dryfit-ink,#000);stroke-width:.6}
.dryfit-drawing .extension{stroke:var(--dryfit-faint,#555);stroke-width:.4}
.dryfit-drawing .dimension{stroke:var(--dryfit-ink,#000);stroke-width:.8}
.dryfit-drawing .tick{stroke:var(--dryfit-ink,#000);stroke-width:1.4}
.dryfit-drawing .zero{fill:var(--dryfit-paper,#fff);stroke:var(--dryfit-ink,#000);stroke-width:1}
.dryfit-drawing .hatch{stroke:var(--dryfit-ink,#000);stroke-width:1.2}
.dryfit-drawing .band{stroke:var(--dryfit-ink,#000);stroke-width:4.5}
.dryfit-drawing .grain{stroke:var(--dryfit-faint,#555);stroke-width:1}
.dryfit-drawing .figure{font-weight:bold}
.dryfit-drawing .heading{font-size:16px;font-weight:bold}
.dryfit-drawing .halo{stroke:var(--dryfit-paper,#fff);stroke-width:5;stroke-linecap:round}
.dryfit-drawing .cross{stroke:var(--dryfit-ink,#000);stroke-width:2.2;stroke-linecap:round}
.dryfit-drawing .mark.warning .cross{stroke-dasharray:4 3}
.dryfit-drawing .mark .words{font-weight:bold}
.dryfit-drawing .way .shaft{stroke:var(--dryfit-ink,#000);stroke-width:3}
.dryfit-drawing .way .head{fill:var(--dryfit-ink,#000)}
.dryfit-drawing .way .words{font-weight:bold}
.dryfit-drawing .told{font-weight:normal}
.dryfit-drawing.elevation .title{font-size:22px}
.dryfit-drawing .found.error>.edge,.dryfit-drawing .found.error>.outline{stroke-width:2.6}
.dryfit-drawing .found.warning>.edge,.dryfit-drawing .found.warning>.outline{stroke-width:1.8;stroke-dasharray:7 3}
`.trim();

/** The same for paper: every variable replaced by its value for print, since many a viewer knows no variables. */
export const printedStyle = drawingStyle.replace(/var\(--[\w-]+,([^)]*)\)/g, '$1');
