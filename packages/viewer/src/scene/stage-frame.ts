import type { Point } from '@flathead/solver';
import { createContext, useContext } from 'react';
import { type Camera, Vector3 } from 'three';
import type { FieldSampler } from '../buffers/field-sampler.ts';
import { rayOnField } from '../buffers/field-sampler.ts';
import type { Box } from '../buffers/least-covering.ts';

/** A piece of the page that stays over a point of the head. */
export interface StageLabel {
  readonly element: HTMLElement;
  readonly kind: 'site' | 'grip' | 'seat' | 'peak' | 'card';
  readonly at: Point;
  /** Height of the face it lies on, mm, without deflection. */
  readonly z: number;
  /** Set where it stays as the head bows. */
  readonly still?: boolean;
  /** Where labels would overlap, those with more stay. */
  readonly weight: number;
  /** Radius of what is drawn at its point, mm; no text covers it. */
  readonly radius?: number;
}

/** The text of a thing on the stage, inside its label and pushed beside its point. */
export interface StageTag {
  readonly element: HTMLElement;
  /** The line from the point to it. */
  readonly leader: HTMLElement;
  readonly weight: number;
  /** Shown whatever it covers. */
  readonly kept: boolean;
  /** As laid out, px; nothing before it was. */
  readonly size: { width: number; height: number };
  /** Place that it has beside its point, as `placeTags` tells it. */
  place: number;
}

/** Lines drawn over the picture of the stage, that follow the head. */
export interface StagePath {
  readonly element: SVGPathElement;
  /** Runs of points in plan, mm; each closed run repeats its first. */
  readonly runs: readonly (readonly Point[])[];
  readonly z: number;
  readonly still?: boolean;
}

/** A force at a point: an arrow along z. */
export interface StageArrow {
  readonly shaft: SVGPathElement;
  readonly tip: SVGPathElement;
  readonly at: Point;
  /** Height of its lower end at rest, mm. */
  readonly z: number;
  readonly length: number;
  /** Whether it points towards the board. */
  readonly down: boolean;
  /** Drawn as seen from its end. */
  readonly endOn: boolean;
}

/**
 * What moves on the stage without React: the factor on the deflection as drawn now, the camera, the field, and the
 * labels that follow them. Changed in place; call {@link StageFrame.redraw} afterwards.
 */
export interface StageFrame {
  /** Shared with the shaders as a uniform. */
  readonly scale: { value: number };
  readonly labels: Map<string, StageLabel>;
  /** Texts by the key of their label. */
  readonly tags: Map<string, StageTag>;
  /** Boxes of the tools over the stage, px from its upper left corner. */
  readonly tools: Map<string, Box>;
  /** The same of all labels in sight but the card, in the last picture. */
  taken: readonly Box[];
  readonly paths: Map<string, StagePath>;
  readonly arrows: Map<string, StageArrow>;
  camera: Camera | null;
  canvas: HTMLCanvasElement | null;
  sampler: FieldSampler | null;
  redraw: () => void;
  /** Nearer by a factor above 1. */
  zoom: (factor: number) => void;
  /** Around the head, or over it where it is seen from above, by shares of a turn or of the stage. */
  turn: (right: number, up: number) => void;
}

export function createStageFrame(): StageFrame {
  return {
    scale: { value: 0 },
    labels: new Map(),
    tags: new Map(),
    tools: new Map(),
    taken: [],
    paths: new Map(),
    arrows: new Map(),
    camera: null,
    canvas: null,
    sampler: null,
    redraw: () => {},
    zoom: () => {},
    turn: () => {},
  };
}

export const StageFrameContext = createContext<StageFrame | null>(null);

export function useStageFrame(): StageFrame {
  const frame = useContext(StageFrameContext);
  if (frame === null) throw new Error('No stage around this component.');
  return frame;
}

/** Deviation at a point as the stage draws it, mm; zero off the plate and before the first answer. */
export function deviationAt({ sampler }: StageFrame, [x, y]: Point): number {
  return sampler?.at(x, y) ?? 0;
}

interface Ray {
  readonly origin: readonly [number, number, number];
  readonly direction: readonly [number, number, number];
}

/** Ray from the eye through a place on the page. */
function rayThrough({ camera, canvas }: StageFrame, clientX: number, clientY: number): Ray | null {
  if (camera === null || canvas === null) return null;
  const { left, top, width, height } = canvas.getBoundingClientRect();
  const [x, y] = [((clientX - left) / width) * 2 - 1, 1 - ((clientY - top) / height) * 2];
  const near = new Vector3(x, y, -1).unproject(camera);
  const far = new Vector3(x, y, 1).unproject(camera).sub(near).normalize();
  return { origin: [near.x, near.y, near.z], direction: [far.x, far.y, far.z] };
}

/** Point of the plan under a place on the page, on the plane at height `z`; `null` when the plane is seen edge-on. */
export function planPoint(frame: StageFrame, clientX: number, clientY: number, z: number): Point | null {
  const ray = rayThrough(frame, clientX, clientY);
  if (ray === null || Math.abs(ray.direction[2]) < 0.02) return null;
  const t = (z - ray.origin[2]) / ray.direction[2];
  return [ray.origin[0] + t * ray.direction[0], ray.origin[1] + t * ray.direction[1]];
}

/** Point of the deflected face at height `z` under a place on the page. */
export function fieldPoint(frame: StageFrame, clientX: number, clientY: number, z: number) {
  const ray = rayThrough(frame, clientX, clientY);
  if (ray === null || frame.sampler === null) return null;
  return rayOnField(frame.sampler, ray.origin, ray.direction, z, frame.scale.value);
}
