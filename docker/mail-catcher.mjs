// A mail catcher without dependencies: speaks enough SMTP to take a message, keeps the last hundred, shows them as text.
import { createServer as http } from 'node:http';
import { createServer as tcp } from 'node:net';

const KEPT = 100;
const LONGEST = 10 << 20;
const messages = [];

tcp((socket) => {
  let buffer = '';
  let data = null;
  let envelope = { from: '', to: [] };
  const answer = (line) => socket.write(`${line}\r\n`);
  const command = (line) => {
    const verb = line.slice(0, 4).toUpperCase();
    if (verb === 'EHLO' || verb === 'HELO') answer('250 mail catcher');
    else if (verb === 'MAIL') {
      envelope = { from: line.slice(10), to: [] };
      answer('250 ok');
    } else if (verb === 'RCPT') {
      envelope.to.push(line.slice(8));
      answer('250 ok');
    } else if (verb === 'DATA') {
      data = [];
      answer('354 end with a dot');
    } else if (verb === 'QUIT') {
      answer('221 bye');
      socket.end();
    } else if (verb === 'RSET' || verb === 'NOOP') answer('250 ok');
    else answer('502 not known here');
  };
  const take = (line) => {
    if (data === null) return command(line);
    if (line !== '.') return void data.push(line.startsWith('..') ? line.slice(1) : line);
    messages.unshift({ ...envelope, at: new Date().toISOString(), text: data.join('\n') });
    messages.length = Math.min(messages.length, KEPT);
    data = null;
    answer('250 kept');
  };
  socket.on('error', () => socket.destroy());
  socket.on('data', (piece) => {
    buffer += piece.toString('utf8');
    if (buffer.length > LONGEST) return void socket.destroy();
    for (let end = buffer.indexOf('\r\n'); end >= 0; end = buffer.indexOf('\r\n')) {
      take(buffer.slice(0, end));
      buffer = buffer.slice(end + 2);
    }
  });
  answer('220 mail catcher');
}).listen(1025);

http((_, response) => {
  response.setHeader('content-type', 'text/plain; charset=utf-8');
  response.end(messages.map((message) => `${message.at}  ${message.from} -> ${message.to.join(', ')}\n\n${message.text}\n\n----\n`).join('\n') || 'No mail yet.\n');
}).listen(8025);
