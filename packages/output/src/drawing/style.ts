/**
 * How a drawing looks, as a style sheet. Every pen and ground is a variable with a value for print, so that a
 * screen gives it its own: `--dryfit-ink`, `--dryfit-paper`, `--dryfit-shade-x`, `-y` and `-z` (faces across that
 * axis), `--dryfit-cut`, `--dryfit-faint`, `--dryfit-font`.
 */
export const drawingStyle = `
.dryfit-drawing{color:var(--dryfit-ink,#000);fill:none;stroke:none;font-family:var(--dryfit-font,Helvetica,Arial,sans-serif);font-size:14px}
.dryfit-drawing text{fill:var(--dryfit-ink,#000);stroke:none}
.dryfit-drawing .title{font-size:18px;font-weight:bold}
.dryfit-drawing .warning{font-weight:bold}
.dryfit-drawing .face{fill:var(--dryfit-paper,#fff)}
.dryfit-drawing .across-x{fill:var(--dryfit-shade-x,#e4e4e4)}
.dryfit-drawing .across-y{fill:var(--dryfit-shade-y,#f2f2f2)}
.dryfit-drawing .across-z,.dryfit-drawing .across-bevel{fill:var(--dryfit-shade-z,#fff)}
.dryfit-drawing .edge{stroke:var(--dryfit-ink,#000);stroke-width:1.1;stroke-linecap:round;stroke-linejoin:round}
.dryfit-drawing .opening{fill:var(--dryfit-cut,#555);stroke:var(--dryfit-ink,#000);stroke-width:.6}
.dryfit-drawing .groove,.dryfit-drawing .rebate,.dryfit-drawing .housing{fill:var(--dryfit-recess,#bbb)}
.dryfit-drawing .leader{stroke:var(--dryfit-faint,#555);stroke-width:.7}
.dryfit-drawing .dot{fill:var(--dryfit-ink,#000);stroke:var(--dryfit-paper,#fff);stroke-width:.8}
.dryfit-drawing .hidden .leader{stroke-dasharray:4 3}
.dryfit-drawing .hidden .dot{fill:var(--dryfit-paper,#fff);stroke:var(--dryfit-ink,#000)}
.dryfit-drawing .side{font-size:16px;font-style:italic}
.dryfit-drawing .found.error>.edge,.dryfit-drawing .found.error>.outline{stroke-width:2.6}
.dryfit-drawing .found.warning>.edge,.dryfit-drawing .found.warning>.outline{stroke-width:1.8;stroke-dasharray:7 3}
`.trim();
