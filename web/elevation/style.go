package elevation

// Style is the style sheet of a drawing. A standalone file carries it; a page
// that holds inline drawings includes it in its own sheet. Colours stand in
// the elements themselves; this adds what they cannot say: how the drawing
// looks where the person has chosen the colours.
const Style = `
.piece{cursor:pointer}
.handle{cursor:grab}
@media print{.drawing .halo{display:none}}
@media screen and (prefers-color-scheme:dark) and (forced-colors:none){
.drawing .paper{fill:#13181c}
.drawing .halo{stroke:#13181c}
.drawing text:not(.on-cut){fill:#e9e6df}
.drawing [fill="#0b4a8f"]>text{fill:#8fbfff}
.drawing [fill="#c8102e"]>text{fill:#ff6674}
.drawing [fill="#595959"]>text{fill:#a9b1b8}
.drawing [fill="#ffffff"]>.plate{fill:#1a2026}
.drawing [fill="#eef1f4"]>:is(.plate,.niche,.window,.note,.key,.corner){fill:#262e35}
svg.drawing:not(.finished) .joints{fill:#7d8790}
svg.drawing:not(.finished) .whole[stroke-dasharray]{stroke:#1a2026}
.drawing .whole:not([stroke-dasharray]),.drawing [fill="#ffffff"]>.outline{fill:#1a2026}
.drawing .set{fill:#353e46}
.drawing .trim:not(.cut-half,.cut-third,.cut-fifth,.cut-least){fill:#262e35}
.drawing [stroke="#000000"]>:is(.outline,.whole,.corner,.lap,.dim,.base,.head,.niche,.window,.fixture,.hole,.finding,.doubt,.set-line,.key,.key-wall,.curve,.note,.cut-least){stroke:#e9e6df}
.drawing [fill="#ffffff"]>:is(.hole,.finding,.doubt,.key,.key-wall){fill:#1a2026}
.drawing [fill="#000000"]>:is(.finding,.doubt,.note,.here):not(text){fill:#e9e6df}
.drawing .level-line:not(text){stroke:#ff6674}
.drawing [stroke="#0b4a8f"]>:is(.course-line,.start,.sheet-line,.key){stroke:#8fbfff}
.drawing [fill="#0b4a8f"]>:is(.course-line,.start,.pointer){fill:#8fbfff}
.drawing [stroke="#595959"]>:is(.course-line,.start,.sheet-line,.corner,.note){stroke:#a9b1b8}
.drawing [fill="#595959"]>:is(.course-line,.start,.pointer){fill:#a9b1b8}
}
@media (forced-colors:active){
.drawing{forced-color-adjust:none}
.drawing .paper,.drawing .plate,.drawing .ground{fill:Canvas}
.drawing text{fill:CanvasText!important;stroke:none!important}
.drawing .halo{stroke:Canvas}
.drawing .joints{fill:CanvasText}
svg.drawing:not(.finished) .whole[stroke-dasharray]{stroke:Canvas}
.drawing .whole:not([stroke-dasharray]){fill:Canvas;stroke:CanvasText}
.drawing [fill="#ffffff"]>:is(.outline,.hole){fill:Canvas}
.drawing .cut-half,.drawing .niche:not(text),.drawing .window:not(text),.drawing .hole{fill:Canvas}
.drawing .piece:not(.whole),.drawing .outline,.drawing .niche:not(text),.drawing .window:not(text),.drawing .hole,.drawing .dim:not(text),.drawing .hatch,.drawing .cut-edge,.drawing .fixture:not(text),.drawing .lap,.drawing .corner,.drawing .centre,.drawing .curve,.drawing .base:not(text),.drawing .head:not(text){stroke:CanvasText}
.drawing .set{fill:GrayText}
.drawing .trim{fill:Canvas}
.drawing .set-line{stroke:CanvasText}
.drawing .level-line:not(text){stroke:Highlight}
.drawing :is(.course-line,.start,.sheet-line):not(text){stroke:LinkText}
.drawing :is([fill="#0b4a8f"],[fill="#595959"])>.course-line:not(text),.drawing .pointer,.drawing .handle path{fill:LinkText;stroke:Canvas}
.drawing .handle path[fill="#000000"]{fill:CanvasText}
.drawing .key,.drawing .key-wall:not(text),.drawing .finding:not(text),.drawing .doubt:not(text){stroke:CanvasText}
.drawing .key-wall:not(text),.drawing .finding:not(text),.drawing .doubt:not(text){fill:Canvas}
.drawing .here:not(text){fill:CanvasText}
.drawing [fill="#ffffff"]>.key,.drawing [fill="#fee391"]>.key{fill:Canvas}
.drawing .note:not(text){stroke:CanvasText}
.drawing [fill="#000000"]>.note:not(text){fill:CanvasText}
.drawing [fill="#eef1f4"]>.note:not(text){fill:Canvas}
}
`
