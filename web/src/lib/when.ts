// when.ts: an instant by the clock of the device: the time today, else the day and the time.

export function when(at: string, now: Date = new Date(), zone?: string): string {
  const then = new Date(at);
  if (Number.isNaN(then.getTime())) return at;
  const inZone = zone === undefined ? {} : { timeZone: zone };
  const part = (date: Date, options: Intl.DateTimeFormatOptions) =>
    new Intl.DateTimeFormat('en-GB', { ...options, ...inZone }).format(date);
  const time = part(then, { hour: 'numeric', minute: '2-digit', hourCycle: 'h23' }).replace(/^0(\d:)/, '$1');
  const day: Intl.DateTimeFormatOptions = { day: 'numeric', month: 'short', year: 'numeric' };
  if (part(then, day) === part(now, day)) return time;
  const sameYear = part(then, { year: 'numeric' }) === part(now, { year: 'numeric' });
  return `${part(then, sameYear ? { day: 'numeric', month: 'short' } : day)} ${time}`;
}
