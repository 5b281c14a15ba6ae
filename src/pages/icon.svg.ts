import { iconSvg } from '../site/icon.ts';

export const GET = (): Response =>
  new Response(iconSvg(), { headers: { 'Content-Type': 'image/svg+xml' } });
