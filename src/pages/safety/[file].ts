import { files } from '../../site/safety/trace.ts';

export const getStaticPaths = () => Object.keys(files).map((file) => ({ params: { file } }));

export const GET = ({ params: { file } }: { params: { file: string } }): Response =>
  new Response(files[file]?.());
