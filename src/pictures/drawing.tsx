import type { JSX } from 'preact';
import type { PartId } from '../../flows/knotter.ts';
import './drawing.css';

/** One shape of a drawing, in the order it is laid down; shapes of a part light up together. */
export interface Shape {
  readonly part?: PartId;
  readonly draw: JSX.Element;
}

/** Where a part sits in its drawing, for the ring around it, in the drawing's own units. */
export interface Spot {
  readonly x: number;
  readonly y: number;
  readonly r: number;
}

/** The part of a drawing that is shown, in its own units. */
export interface Frame {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

interface DrawingProps {
  readonly frame: Frame;
  readonly shapes: readonly Shape[];
  readonly lit: PartId;
  readonly spot: Spot;
  /** Where the eye is drawn that looks at the part, and how large against its usual size. */
  readonly eye: { readonly x: number; readonly y: number; readonly scale?: number };
  readonly alt: string;
}

/** A line drawing with one part lit: filled, ringed, and looked at by an eye along a sight line. */
export function Drawing({ frame, shapes, lit, spot, eye, alt }: DrawingProps): JSX.Element {
  const away = Math.hypot(spot.x - eye.x, spot.y - eye.y) || 1;
  const end = {
    x: spot.x - ((spot.x - eye.x) * spot.r) / away,
    y: spot.y - ((spot.y - eye.y) * spot.r) / away,
  };
  return (
    <svg
      class="drawing"
      viewBox={`${frame.x} ${frame.y} ${frame.width} ${frame.height}`}
      role="img"
      aria-label={alt}
    >
      {shapes.map(({ part, draw }, layer) => (
        <g key={layer} class="shape" data-lit={part === lit}>
          {draw}
        </g>
      ))}
      <path class="sight-edge" d={`M${eye.x} ${eye.y}L${end.x} ${end.y}`} />
      <path class="sight" d={`M${eye.x} ${eye.y}L${end.x} ${end.y}`} />
      <circle class="ring-edge" cx={spot.x} cy={spot.y} r={spot.r} />
      <circle class="ring" cx={spot.x} cy={spot.y} r={spot.r} />
      <g transform={`translate(${eye.x} ${eye.y}) scale(${eye.scale ?? 1})`} class="eye">
        <path d="M-24 0Q0-24 24 0 0 24-24 0Z" />
        <circle r="8" />
      </g>
    </svg>
  );
}
