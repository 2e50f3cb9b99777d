/**
 * Parses messages from the host, which arrive as `unknown`. The host belongs to the same extension, so only the outer
 * structure is checked: a page left over from another version must not draw half a scene.
 */

import type {
  BatchMessage,
  CoveredMessage,
  FixesMessage,
  GoneMessage,
  HighlightMessage,
  MeasuresMessage,
  OutcomeMessage,
  SceneMessage,
  ScreenMessage,
  EstimateMessage,
  ToPage,
} from '../../src/protocol/preview.ts';
import type { Scene, ScenePin } from '../../src/protocol/scene.ts';

type Fields = Readonly<Record<string, unknown>>;

/** `undefined` for anything that is not a message of the protocol. */
export function parseToPage(data: unknown): ToPage | undefined {
  if (!isFields(data) || typeof data['source'] !== 'string') return undefined;
  switch (data['type']) {
    case 'scene':
      return isSceneMessage(data) ? data : undefined;
    case 'highlight':
      return isHighlight(data) ? data : undefined;
    case 'measures':
      return isMeasures(data) ? data : undefined;
    case 'takes':
      return isEstimate(data) ? data : undefined;
    case 'batch':
      return isBatchTags(data) ? data : undefined;
    case 'screen':
      return isScreen(data) ? data : undefined;
    case 'covered':
      return isCovered(data) ? data : undefined;
    case 'fixes':
      return isFixes(data) ? data : undefined;
    case 'outcome':
      return isOutcome(data) ? data : undefined;
    case 'gone':
      return isGone(data) ? data : undefined;
    default:
      return undefined;
  }
}

function isSceneMessage(data: Fields): data is Fields & SceneMessage {
  return (
    typeof data['version'] === 'number' &&
    typeof data['fileName'] === 'string' &&
    (data['batch'] === undefined || isBatch(data['batch'])) &&
    typeof data['stale'] === 'boolean' &&
    isListOf(data['pins'], isPin) &&
    isListOf(data['accepted'], isAccepted) &&
    (data['trying'] === undefined || isTrying(data['trying'])) &&
    (data['scene'] === undefined || isScene(data['scene']))
  );
}

function isHighlight(data: Fields): data is Fields & HighlightMessage {
  return isListOf(data['ids'], isString) && typeof data['follow'] === 'boolean';
}

function isMeasures(data: Fields): data is Fields & MeasuresMessage {
  return (
    typeof data['version'] === 'number' &&
    isListOf(data['loads'], isLoad) &&
    isListOf(data['walls'], isWall) &&
    isListOf(data['cutPaths'], isCutPath)
  );
}

function isGone(data: Fields): data is Fields & GoneMessage {
  return isString(data['fileName']) && (data['other'] === undefined || isString(data['other']));
}

function isEstimate(data: Fields): data is Fields & EstimateMessage {
  const isFact = (fact: unknown): boolean => isFields(fact) && isString(fact['name']) && isString(fact['value']);
  return typeof data['version'] === 'number' && isListOf(data['facts'], isFact);
}

function isBatchTags(data: Fields): data is Fields & BatchMessage {
  return typeof data['version'] === 'number' && isListOf(data['tags'], isBatchTag);
}

function isBatchTag(value: unknown): boolean {
  if (!isFields(value) || !Number.isFinite(value['problems'])) return false;
  if ([value['isTall'], value['isHardToRead']].some((flag) => typeof flag !== 'boolean')) return false;
  const { picture, width, height } = value;
  return (
    [width, height].every((mm) => mm === undefined || Number.isFinite(mm)) &&
    (picture === undefined || isPicture(picture))
  );
}

function isPicture(value: unknown): boolean {
  if (!isFields(value) || !isFields(value['size'])) return false;
  const { width, height } = value['size'];
  const isPath = (path: unknown): boolean => isFields(path) && isString(path['use']) && isString(path['data']);
  return isNumbers([width, height], 2) && isListOf(value['paths'], isPath);
}

function isWall(value: unknown): boolean {
  return (
    isFields(value) &&
    isString(value['piece']) &&
    Number.isFinite(value['width']) &&
    isListOf(value['points'], (point) => isNumbers(point, 2)) &&
    (value['points'] as unknown[]).length === 2
  );
}

function isCutPath(value: unknown): boolean {
  return isFields(value) && isString(value['piece']) && isString(value['data']) && isNumbers([value['kerf']], 1);
}

function isScreen(data: Fields): data is Fields & ScreenMessage {
  const { devicePixelsPerMm } = data;
  return devicePixelsPerMm === undefined || (isNumbers([devicePixelsPerMm], 1) && Number(devicePixelsPerMm) > 0);
}

function isCovered(data: Fields): data is Fields & CoveredMessage {
  return Number.isFinite(data['rows']);
}

function isFixes(data: Fields): data is Fields & FixesMessage {
  return (
    typeof data['version'] === 'number' &&
    isString(data['pin']) &&
    isListOf(data['titles'], isString) &&
    ['accept', 'inTheWay'].every((key) => data[key] === undefined || isString(data[key]))
  );
}

function isOutcome(data: Fields): data is Fields & OutcomeMessage {
  const isGhost = (piece: unknown): boolean =>
    isFields(piece) &&
    ['id', 'title', 'solid', 'marks'].every((key) => isString(piece[key])) &&
    isNumbers(piece['bounds'], 4);
  return isNumbers([data['version'], data['index']], 2) && isString(data['pin']) && isListOf(data['pieces'], isGhost);
}

function isLoad(value: unknown): boolean {
  return (
    isFields(value) &&
    isString(value['piece']) &&
    isString(value['headline']) &&
    isString(value['caution']) &&
    isString(value['rule']) &&
    isListOf(value['lines'], isString)
  );
}

function isScene(value: unknown): value is Scene {
  return (
    isFields(value) &&
    (value['units'] === 'mm' || value['units'] === 'in') &&
    isFields(value['colours']) &&
    (value['thickness'] === undefined || isNumbers([value['thickness']], 1)) &&
    isNumbers(value['bounds'], 4) &&
    isListOf(value['grips'], isGrip) &&
    isListOf(value['ghosts'], isGhost) &&
    isListOf(value['pieces'], isPiece)
  );
}

function isGhost(value: unknown): boolean {
  return (
    isFields(value) &&
    isString(value['id']) &&
    isString(value['label']) &&
    isString(value['data']) &&
    Number.isFinite(value['source'])
  );
}

function isGrip(value: unknown): boolean {
  return (
    isFields(value) &&
    isString(value['id']) &&
    isString(value['label']) &&
    typeof value['free'] === 'boolean' &&
    typeof value['moves'] === 'boolean' &&
    isListOf(value['parts'], isString) &&
    isListOf(value['axes'], (axis) => axis === 'width' || axis === 'height') &&
    isNumbers(value['nudge'], 2)
  );
}

function isAccepted(value: unknown): boolean {
  return isFields(value) && ['id', 'code', 'message', 'reason'].every((key) => isString(value[key]));
}

function isBatch(value: unknown): boolean {
  return isFields(value) && isListOf(value['labels'], isString) && isNumbers([value['row']], 1);
}

function isTrying(value: unknown): boolean {
  if (!isFields(value) || !isString(value['grip']) || !isFields(value['change'])) return false;
  const { kind, right, up, axis, by } = value['change'];
  return kind === 'move' ? isNumbers([right, up], 2) : kind === 'size' && isString(axis) && isNumbers([by], 1);
}

function isPiece(value: unknown): boolean {
  return (
    isFields(value) &&
    isString(value['id']) &&
    isString(value['title']) &&
    isNumbers(value['bounds'], 4) &&
    isNumbers(value['balance'], 2) &&
    isListOf(value['parts'], isPart) &&
    isListOf(value['shapes'], isShape) &&
    isListOf(value['hangers'], isHanger)
  );
}

function isPart(value: unknown): boolean {
  return isShape(value) && isString((value as Fields)['operation']);
}

function isHanger(value: unknown): boolean {
  return isFields(value) && isString(value['id']) && isString(value['data']) && isNumbers(value['centre'], 2);
}

function isShape(value: unknown): boolean {
  return isFields(value) && isString(value['id']) && isString(value['label']) && isString(value['data']);
}

function isPin(value: unknown): value is ScenePin {
  return (
    isFields(value) &&
    isString(value['id']) &&
    isString(value['message']) &&
    (value['severity'] === 'error' || value['severity'] === 'warning' || value['severity'] === 'info') &&
    isPlace(value) &&
    (value['others'] === undefined || isListOf(value['others'], isPlace))
  );
}

function isPlace(value: unknown): boolean {
  return isFields(value) && isListOf(value['points'], (point) => isNumbers(point, 2));
}

const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null;
const isString = (value: unknown): value is string => typeof value === 'string';

function isListOf(value: unknown, isMember: (member: unknown) => boolean): boolean {
  return Array.isArray(value) && value.every(isMember);
}

function isNumbers(value: unknown, count: number): boolean {
  return isListOf(value, Number.isFinite) && (value as unknown[]).length === count;
}
