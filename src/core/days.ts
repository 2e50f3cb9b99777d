/** Days as ISO 8601 writes them: 2026-11-30. */

/** Whether the day exists. */
export function isDay(text: string): boolean {
  const day = new Date(`${text}T00:00:00Z`);
  return text.length === 10 && !Number.isNaN(day.getTime()) && day.toISOString().startsWith(text);
}

/** In the local time zone. */
export function today(): string {
  const now = new Date();
  const two = (figure: number): string => String(figure).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
