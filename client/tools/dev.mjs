// npm run dev: the server, restarted when its code changes, and the page with hot reload in front of it.
import { spawn } from 'node:child_process';
import { createServer } from 'vite';

const page = Number(process.env.PORT ?? 8080);
const api = page + 1;
const target = `http://127.0.0.1:${api}`;

const server = spawn('tsx', ['watch', '--clear-screen=false', 'server/main.ts'], {
  stdio: 'inherit',
  env: { ...process.env, PORT: String(api), HOST: '127.0.0.1' },
});

const vite = await createServer({
  configFile: 'client/vite.config.ts',
  server: { host: '127.0.0.1', port: page, strictPort: true, proxy: { '/api': { target, ws: true } } },
});
await vite.listen();
vite.printUrls();

async function stop(code) {
  server.kill('SIGTERM');
  await vite.close();
  process.exit(code);
}
server.on('exit', (code) => void stop(code ?? 0));
process.on('SIGINT', () => void stop(0));
process.on('SIGTERM', () => void stop(0));
