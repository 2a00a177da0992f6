import { useFrame } from '@react-three/fiber';
import { type Camera, Vector3 } from 'three';
import { type Box, leastCovering } from '../buffers/least-covering.ts';
import { placeTags, UNDER } from '../buffers/place-tags.ts';
import { siteForms } from '../buffers/site-forms.ts';
import { deviationAt, type StageFrame, type StageLabel, type StageTag, useStageFrame } from './stage-frame.ts';

/** From a grip to its card, and from a card to the edge of the stage, px. */
const GAPS = { beside: 38, edge: 8 };
/** Half the size of a grip and of the mark of a peak, and of an arrow's width, px. */
const MARK = 7;

const point = new Vector3();
const right = new Vector3();

interface Anchor {
  readonly key: string;
  readonly label: StageLabel;
  readonly x: number;
  readonly y: number;
  /** Of what is drawn there, px. */
  readonly radius: number;
}

/** Puts the labels over their points with every picture, and the texts of things where they cover neither each other nor a screw. */
export function LabelProjector() {
  const stage = useStageFrame();
  useFrame(({ camera, size }) => {
    const anchors = [...stage.labels].map(([key, label]): Anchor => {
      if (label.element.dataset.placed === undefined) label.element.dataset.placed = 'true';
      const [x, y] = onPage(stage, camera, size, label);
      return { key, label, x, y, radius: label.radius === undefined ? 0 : radiusOnPage(camera, size, label.radius, x) };
    });
    const never = anchors.filter(({ radius }) => radius > 0).map(headBox);
    const sites = placeSites(anchors, never);
    const marks = anchors.filter(({ label: { kind }, radius }) => radius === 0 && kind !== 'site' && kind !== 'card');
    const taken = [...sites, ...marks.map(({ x, y }) => square(x, y, MARK)), ...arrowBoxes(stage, camera, size)];
    for (const { label, x, y } of anchors)
      if (label.kind === 'grip' || label.kind === 'seat' || label.kind === 'peak') put(label.element, x, y);
    const texts = placeTexts(stage, anchors, size, { never: [...never, ...stage.tools.values()], taken });
    stage.taken = [...sites, ...texts, ...never];
    const card = anchors.find(({ label }) => label.kind === 'card');
    if (card === undefined) return;
    const { element } = card.label;
    const own = { width: element.offsetWidth, height: element.offsetHeight };
    const [left, top] = leastCovering([card.x, card.y], own, size, stage.taken, GAPS);
    element.style.transform = `translate(${left.toFixed(1)}px, ${top.toFixed(1)}px)`;
  });
  return null;
}

/** @returns what they take of the stage */
function placeSites(anchors: readonly Anchor[], never: readonly Box[]): Box[] {
  const sites = anchors.filter(({ label }) => label.kind === 'site');
  const forms = siteForms(
    sites.map(({ label: { element, weight }, x, y }) => ({ x, y, weight, worst: element.dataset.worst !== undefined })),
    never,
  );
  return sites.flatMap(({ label: { element }, x, y }, i) => {
    const { form, dx, dy, box } = forms[i];
    if (element.dataset.form !== form) element.dataset.form = form;
    put(element, x + dx, y + dy);
    return box === null ? [] : [box];
  });
}

/** @returns what they take of the stage */
function placeTexts(
  { tags }: StageFrame,
  anchors: readonly Anchor[],
  room: Size,
  obstacles: { readonly never: readonly Box[]; readonly taken: readonly Box[] },
): Box[] {
  const sites = anchors.filter(({ label }) => label.kind === 'site');
  const middle = (axis: 'x' | 'y', without: number): number =>
    sites.length === 0 ? without / 2 : sites.reduce((sum, site) => sum + site[axis], 0) / sites.length;
  const centre = [middle('x', room.width), middle('y', room.height)] as const;
  const texts = anchors.flatMap(({ key, x, y, radius }) => {
    const tag = tags.get(key);
    return tag === undefined || tag.size.width === 0 ? [] : [{ tag, x, y, radius }];
  });
  const placed = placeTags(
    texts.map(({ tag: { size, weight, kept, place }, x, y, radius }) => ({
      x,
      y,
      radius,
      ...size,
      weight,
      kept,
      place,
    })),
    { ...obstacles, room, centre },
  );
  return texts.flatMap(({ tag, x, y, radius }, i) => {
    const { place, dx, dy, led } = placed[i];
    tag.place = place;
    tag.element.toggleAttribute('data-out', place === -1);
    tag.leader.hidden = !led;
    const { width, height } = tag.size;
    if (place === -1) {
      put(tag.element, 0, -Math.max(MARK, radius) - height / 2);
      return [];
    }
    put(tag.element, dx, dy);
    if (led) lead(tag, dx, dy, radius);
    return [{ left: x + dx - width / 2, top: y + dy - height / 2, width, height }];
  });
}

/** Draws the line from the rim of a thing to the nearest point of its text. */
function lead({ leader, size: { width, height } }: StageTag, dx: number, dy: number, radius: number): void {
  const x = Math.max(dx - width / 2, Math.min(0, dx + width / 2));
  const y = Math.max(dy - height / 2, Math.min(0, dy + height / 2));
  const length = Math.max(0, Math.hypot(x, y) - radius);
  leader.style.transform = `rotate(${Math.atan2(y, x).toFixed(3)}rad) translate(${radius.toFixed(1)}px, -50%) scaleX(${length.toFixed(1)})`;
}

const places = new WeakMap<HTMLElement, { x: number; y: number }>();

/** Puts the middle of a label over a place, px. */
function put(element: HTMLElement, x: number, y: number): void {
  const last = places.get(element);
  if (last !== undefined && Math.abs(last.x - x) < 0.05 && Math.abs(last.y - y) < 0.05) return;
  places.set(element, { x, y });
  element.style.transform = `translate(${x.toFixed(1)}px, ${y.toFixed(1)}px) translate(-50%, -50%)`;
}

function headBox({ x, y, radius }: Anchor): Box {
  return { left: x - radius, top: y - radius, width: 2 * radius, height: (1 + UNDER) * radius };
}

function square(x: number, y: number, half: number): Box {
  return { left: x - half, top: y - half, width: 2 * half, height: 2 * half };
}

function arrowBoxes(stage: StageFrame, camera: Camera, size: Size): Box[] {
  return [...stage.arrows.values()].map((arrow) => {
    const [x, y] = onPage(stage, camera, size, arrow);
    if (arrow.endOn) return square(x, y, 2 * MARK);
    const [, tip] = onPage(stage, camera, size, { ...arrow, z: arrow.z + arrow.length });
    return { left: x - MARK, top: Math.min(y, tip), width: 2 * MARK, height: Math.abs(tip - y) };
  });
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Place on the stage of a point that follows the head unless it is still, px. */
export function onPage(
  stage: StageFrame,
  camera: Camera,
  { width, height }: Size,
  { at, z, still = false }: Pick<StageLabel, 'at' | 'z' | 'still'>,
): readonly [number, number] {
  point.set(at[0], at[1], still ? z : z + stage.scale.value * deviationAt(stage, at));
  seen.copy(point).project(camera);
  return [((seen.x + 1) / 2) * width, ((1 - seen.y) / 2) * height];
}

/** The point that was seen last, where it is and where it is seen. */
const seen = new Vector3();

/** What a length across the view is at the point seen last, px. @param x of that point */
function radiusOnPage(camera: Camera, { width }: Size, radius: number, x: number): number {
  right.setFromMatrixColumn(camera.matrixWorld, 0);
  point.addScaledVector(right, radius).project(camera);
  return Math.abs(((point.x + 1) / 2) * width - x);
}
