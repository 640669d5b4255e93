/** Colours and strokes of the drawings, by class; screen and paper share them through custom properties. */
export const drawingStyle = `
.draw{width:100%;height:auto;display:block;font-family:var(--text)}
.draw text{fill:var(--ink);font-size:13px}
.draw .sub{fill:var(--quiet);font-size:12px}.draw .num{font-weight:700;font-size:15px}.draw .pos{font-weight:700;font-size:14px}.draw .cart{font-weight:700}
.draw .mono,.draw .ang{font-family:var(--mono);font-weight:600}.draw .ang{font-size:12.5px}.draw .slot{font-weight:750;font-size:18px}
.draw .small{font-size:11.5px}.draw .tiny{font-size:10.5px}.draw .id{font-size:21px}.draw .rowno{font-weight:700}
.draw .box{fill:var(--soft);stroke:var(--ink);stroke-width:1.3}.draw .box.wrong,.draw .piece.wrong{fill:url(#hatch);stroke:var(--warn);stroke-width:2.2}.draw .hatchline{stroke:var(--warn);stroke-width:2.2}
.draw .steel{fill:var(--ink)}.draw .hole{fill:var(--paper)}.draw .chain,.draw .brace,.draw .bar{stroke:var(--ink);fill:none;stroke-width:1.2}.draw .bar{stroke-dasharray:4 3}
.draw .hoist{fill:var(--paper);stroke:var(--ink);stroke-width:1.3}.draw .cg{fill:var(--paper);stroke:var(--ink);stroke-width:1.3;fill-opacity:.75}
.draw .front{fill:var(--ink)}.draw .lid{stroke:var(--ink);stroke-width:5;fill:none}.draw .wheel{fill:var(--ink)}
.draw .piece.kept{stroke-width:3}.draw .truck{fill:none;stroke:var(--ink);stroke-width:2}.draw .piece{fill:var(--soft);stroke:var(--ink);stroke-width:1.1}
.draw .ghost{fill:none;stroke:var(--ink);stroke-width:1.6;stroke-dasharray:5 4}.draw .now{fill:var(--act);stroke:var(--ink);stroke-width:1.6}.draw text.onnow{fill:var(--paper)}.draw .new{fill:var(--act);stroke:var(--paper);stroke-width:1.2}.draw text.name{paint-order:stroke;stroke:var(--paper);stroke-width:3px;stroke-linejoin:round}.draw .way{fill:none;stroke:var(--ink);stroke-width:3}.draw text.big{font-size:19px}
.draw .force{stroke:var(--act);fill:var(--act);stroke-width:3}.draw .barforce{stroke:var(--act);stroke-width:4}.draw .barforce.pushed{stroke-dasharray:3 2}
.draw .tick{stroke:var(--line)}.draw .showday{fill:var(--soft)}.draw .life{stroke:var(--ink);stroke-width:5}.draw .cut{stroke:var(--warn);stroke-width:4}.draw .why{fill:var(--warn);font-weight:650}
`;

/** Sheets on A4 and Letter, black on white. */
export const sheetStyle = `
.sheetpage{--paper:#fff;--ink:#000;--soft:#fff;--line:#777;--quiet:#333;--warn:#000;--act:#000;color:#000;background:#fff;font-family:var(--text);font-size:14.5px;line-height:1.4;max-width:186mm;margin:0 auto;padding:6mm 0}
.sheetpage + .sheetpage,div + div > .sheetpage{break-before:page}
.sheetpage h1{font-size:26px;line-height:1.1;margin:0}.sheetpage h2{font-size:17px;margin:5mm 0 2mm}
.sheetpage .top{display:grid;grid-template-columns:1fr auto;align-items:end;gap:6mm;border-bottom:3px solid #000;padding-bottom:2mm;margin-bottom:3mm}.sheetpage .top p{margin:0}.sheetpage .top p.right{text-align:right}
.sheetpage .big{font-size:60px;font-weight:800;line-height:1}
.sheetpage table{border-collapse:collapse;width:100%;font-variant-numeric:tabular-nums}.sheetpage th,.sheetpage td{text-align:left;padding:1.2mm 2mm;border-bottom:1px solid #777;vertical-align:top}.sheetpage th{border-bottom:1.5px solid #000}.sheetpage td.n,.sheetpage th.n{text-align:right}.sheetpage td.n{white-space:nowrap}.sheetpage .half td,.sheetpage .half th{padding:0 1mm;font-size:11px;line-height:1.08}.sheetpage .tight td,.sheetpage .tight th{padding:.5mm 1.5mm;font-size:12.5px;line-height:1.3}.sheetpage .inorder{columns:3;column-gap:6mm;font-size:12px;line-height:1.3;margin:1mm 0;padding-left:7mm}.sheetpage .inorder li{break-inside:avoid}.sheetpage ul{margin:2mm 0;padding-left:5mm;font-size:13px}.sheetpage .findings{list-style:none;padding:0}.sheetpage tr{break-inside:avoid}
.sheetpage .mono{font-family:var(--mono);font-weight:600}.sheetpage .tight .mono,.sheetpage .half ~ table .mono,.sheetpage .inorder .mono{white-space:nowrap}
.sheetpage .slots td{border:2px solid #000;padding:3mm 4mm;font-size:30px}.sheetpage .slots .k{font-weight:800;font-size:54px;width:20mm;text-align:center}.sheetpage .slots .s{font-family:var(--mono);font-weight:700;font-size:38px}.sheetpage .slots .a{font-family:var(--mono);font-weight:700;font-size:38px;text-align:right;white-space:nowrap}.sheetpage .slots small{display:block;font:400 14px var(--text)}.sheetpage .slots .tick{width:18mm}.sheetpage .slots .joint{border:0;padding:1mm 4mm;font-family:var(--mono);font-weight:700;font-size:24px;text-align:right}.sheetpage .slots .joint small{display:inline;margin-left:3mm}
.sheetpage .caution{border-top:1.5px solid #000;margin-top:4mm;padding-top:2mm}
.sheetpage .half{display:grid;grid-template-columns:84mm 1fr;gap:6mm}.sheetpage .draw{max-height:200mm}.sheetpage .half .draw{max-height:74mm}.sheetpage .half ~ ul{columns:2;column-gap:6mm;font-size:12px}
.sheetpage .caution,.sheetpage .sign{break-inside:avoid}.sheetpage .half ~ p{margin:1.2mm 0;font-size:12.5px;line-height:1.3}.sheetpage .half ~ h2{margin:1mm 0 .5mm}.sheetpage .half ~ table td,.sheetpage .half ~ table th{padding:.4mm 2mm;font-size:13px;line-height:1.25}.sheetpage .half ~ .caution{font-size:12.5px;margin-top:2mm;padding-top:1mm}.sheetpage .sign{display:grid;grid-template-columns:1fr 1fr 1fr;gap:6mm;margin-top:6mm}.sheetpage .sign span{border-top:1px solid #000;padding-top:1mm;font-size:12.5px}
.sheetpage .tickbox{display:inline-block;width:5mm;height:5mm;border:1.5px solid #000;vertical-align:-1mm}
.sheetpage .stop{font-weight:700}.sheetpage .signed tbody td{height:14mm}.sheetpage .signed th{width:40%}.sheetpage .signed th:first-child{width:20%}.sheetpage:has(.twin){font-size:12px;line-height:1.3}.sheetpage:has(.twin) h1{font-size:22px}.sheetpage:has(.twin) .caution{margin-top:1.2mm;padding-top:.6mm}.sheetpage:has(.twin) .sign{margin-top:4mm}.sheetpage .twin{display:grid;grid-template-columns:1fr 1fr;gap:5mm;align-items:start}.sheetpage .twin td,.sheetpage .twin th{padding:0 1mm;font-size:10.5px;line-height:1.22}.sheetpage ol{margin:1mm 0;padding-left:6mm;font-size:12px}.sheetpage .dense td,.sheetpage .dense th{padding:.3mm 1.5mm;font-size:10.5px;line-height:1.25}.sheetpage .twin ~ .dense td{padding:.2mm 1.5mm;line-height:1.2}.sheetpage .dense p{font-size:10px;margin:1mm 0}.sheetpage .steps td{padding:.5mm 2mm;font-size:12.5px;line-height:1.3}.sheetpage small{font-size:11px}.sheetpage .twin ~ p{font-size:11.5px;margin:1mm 0}.sheetpage .twin ~ h2{margin:1.2mm 0 .3mm;font-size:14px}.sheetpage .twin ~ ul{font-size:11px;line-height:1.25;margin:.8mm 0}
.sheetpage .stowing{display:grid;grid-template-columns:1fr 1fr;gap:2mm 5mm;margin:2mm 0}.sheetpage .line{white-space:nowrap}.sheetpage .together{break-inside:avoid}
.sheetpage .paged > thead > tr > td,.sheetpage .paged > tbody > tr > td{padding:0;border:0}.sheetpage .paged > tbody > tr{break-inside:auto}.sheetpage .pagehead{display:flex;justify-content:space-between;gap:6mm;border-bottom:1.5px solid #000;padding-bottom:1mm;margin-bottom:2mm;font-size:12px}.sheetpage h3{font-size:14.5px;margin:3mm 0 1mm;break-after:avoid}.sheetpage h2{break-after:avoid}.sheetpage .hash{font-family:var(--mono);font-size:10px;overflow-wrap:anywhere}.sheetpage .items td,.sheetpage .items th,.sheetpage .reports td,.sheetpage .reports th{font-size:11px}.sheetpage .items td:nth-child(1){white-space:nowrap}
@media print{.sheetpage{padding:0}}
.numbered{page:numbered}
@page numbered{margin:12mm 12mm 16mm;@bottom-left{content:"Does not replace the competent person on site, who confirms every figure before anything is lifted.";font-size:8pt;width:140mm;text-align:left}@bottom-right{content:"Page " counter(page) " of " counter(pages);font-size:9pt}}
@page{margin:12mm}
`;
