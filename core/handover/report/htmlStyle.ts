/** Look of the report as a web page. */

/** Style sheet; tones of pictures are set before it, here are those of a dark screen. */
export const reportStyle = `
:root{color-scheme:light dark;--page:#fff;--link:#0b57a4;--warn-edge:#b3261e;--warn-page:#fdf0ee;--line:#d0d0d0;--head:#f1f3f5}
@media screen and (prefers-color-scheme:dark){:root{--page:#16181b;--ink:#eceff1;--soft:#b4bac0;--grid:#3a4047;--steel:#59636d;--paper:#16181b;--link:#8cc2ff;--warn-edge:#ff8a80;--warn-page:#331b1b;--line:#3f454c;--head:#22262b;--curve1:#6db8f0;--curve2:#ff9a5c;--curve3:#4fd1a5;--curve4:#e59cc6;--curve5:#e3b341;--curve6:#eceff1}}
*{box-sizing:border-box}
body{margin:0;background:var(--page);color:var(--ink);font:16px/1.5 Helvetica,Arial,"Liberation Sans",sans-serif}
main,footer{max-width:62rem;margin:0 auto;padding:0 1.25rem}
h1{font-size:1.9rem;line-height:1.2;margin:2rem 0 .25rem}
h2{font-size:1.35rem;line-height:1.25;margin:2.5rem 0 .75rem;padding-top:.75rem;border-top:2px solid var(--line)}
h3{font-size:1.05rem;margin:1.75rem 0 .5rem}
.subtitle{font-size:1.15rem;margin:0 0 1rem;color:var(--soft)}
p{margin:.6rem 0;max-width:48rem;overflow-wrap:anywhere}
.lead{font-size:1.08rem}
.small{font-size:.875rem;color:var(--soft)}
.warning{border-left:4px solid var(--warn-edge);background:var(--warn-page);padding:.5rem .75rem}
.notice{position:sticky;top:0;z-index:1;max-width:none;margin:0;padding:.5rem 1.25rem;text-align:center;background:var(--warn-page);border-bottom:2px solid var(--warn-edge);font-weight:600}
dl{display:grid;grid-template-columns:max-content 1fr;gap:.2rem 1rem;margin:1rem 0}
dt{color:var(--soft)}dd{margin:0;overflow-wrap:anywhere}
a{color:var(--link)}
a:focus-visible,.wide:focus-visible{outline:3px solid var(--link);outline-offset:2px}
ul,ol{padding-left:1.4rem;max-width:50rem}li{margin:.25rem 0}
section,figure,table,h3{scroll-margin-top:4rem}
.wide{overflow-x:auto;margin:1.25rem 0}
table{border-collapse:collapse;width:100%;min-width:40rem;font-size:.875rem;line-height:1.4}
caption{text-align:left;font-weight:600;padding:.25rem 0 .5rem}
th,td{border-bottom:1px solid var(--line);padding:.35rem .5rem;text-align:left;vertical-align:top;overflow-wrap:anywhere}
thead th{background:var(--head);border-bottom:2px solid var(--soft)}
tbody th{font-weight:400}
.number{text-align:right;font-variant-numeric:tabular-nums}
.swatch{display:inline-block;width:2.2em;height:1.1em;border:1px solid var(--soft);vertical-align:-.15em}
figure{margin:1.5rem 0}
svg{display:block;width:100%;max-width:56rem;height:auto;font-family:Helvetica,Arial,"Liberation Sans",sans-serif}
figcaption{font-size:.875rem;color:var(--soft);margin-top:.4rem;max-width:48rem}
footer{margin-top:3rem;padding-bottom:2rem;color:var(--soft);font-size:.875rem}
@media print{
@page{size:A4;margin:20mm 18mm}
body{font-size:9.5pt}
main,footer{max-width:none;padding:0}
.wide{overflow:visible}
table{min-width:0;font-size:8pt}
thead{display:table-header-group}
tr,figure{break-inside:avoid}
h2,h3,caption{break-after:avoid}
.own-page{break-before:page;break-after:page}
.notice{position:fixed;top:-14mm;left:0;right:0;border:0;font-size:8pt}
.swatch,path,.notice,.warning,thead th{print-color-adjust:exact;-webkit-print-color-adjust:exact}
}
`;
