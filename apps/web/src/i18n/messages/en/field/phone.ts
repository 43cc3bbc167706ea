/** The words of the phone itself: what is on it, and what was sent. */
export const phone = {
  'field.sent.waits':
    '{isUnderWay, select, true {Sending. } other {}}On this phone: {waiting, plural, =0 {} one {one record} other {# records}}{photos, plural, =0 {} one {{waiting, plural, =0 {} other {, }}one photo} other {{waiting, plural, =0 {} other {, }}# photos}}. {last, select, never {Nothing sent yet.} other {Last sent at {last}.}}',
  'field.sent.refused':
    '{refused, plural, one {One record was} other {# records were}} refused: look here.{waiting, plural, =0 {} other { # more wait.}}',
  'field.sent.disputed':
    '{isSelf, select, true {You said something else elsewhere} other {Somebody else said something else}} of {disputed, plural, one {one record} other {# records}}: look here.{waiting, plural, =0 {} other { # more wait.}}',
  'field.dayEnd.over': 'The day is done',
  'field.dayEnd.soFar': 'The day so far',
  'field.dayEnd.done':
    'Stops closed: {closed} of {stops}; {done, plural, =0 {no order done} one {one order done} other {# orders done}}{minutes, select, none {} other {, {minutes} of work}}.',
  'field.dayEnd.left':
    '{left, plural, =0 {Nothing is left for another day{open, plural, =0 {} one {; one stop is still open} other {; # stops are still open}}.} one {One order is not done.} other {# orders are not done.}}',
  'field.dayEnd.water': 'What was done answers findings of {water}: if it holds, that much does not run again.',
  'field.phone.keepsNothing':
    'This browser keeps nothing on the phone, so work without signal would be lost. Open Rillbook outside a private window.',
  'field.phone.notSaved':
    'The phone could not keep the last thing: it is full, or the browser forbids it. Write it down, make room, and save again.',
  'field.phone.oldPage': 'A newer version of Rillbook is open on this phone. Load this page again to go on.',
  'field.done.workedMinutes': 'Minutes of work, all hands together',
  'field.done.workedMinutesHint': 'Left empty, the time here counts once.',
  'field.done.wrongMinutes': '“{found}” is no number of minutes. Type a number such as 45.',
  'field.materials': 'Materials used',
  'field.materials.add': 'Add a material',
  'field.materials.count': 'How many, line {number}',
  'field.materials.wrongCount': '{name}: “{found}” is no count. Type how many in digits, such as 3 or 1.5.',
  'field.materials.name': 'Of what, line {number}',
  'field.phone.title': 'On this phone',
  'field.phone.sendNow': 'Send now',
  'field.phone.again': 'Send again',
  'field.phone.waiting':
    '{count, plural, =0 {{photos, plural, =0 {Nothing waits} other {All words are sent}}} one {One record waits} other {# records wait}}',
  'field.phone.photos':
    '{count, plural, =0 {} one {One photo waits; it goes after the words.} other {# photos wait; they go after the words.}}',
  'field.phone.refused':
    '{count, plural, one {One was refused. It stays here until it is sent.} other {# were refused. They stay here until they are sent.}}',
  'field.phone.sent': 'Sent in the last 30 days',
  'field.phone.noneSent': 'Nothing yet.',
  'field.phone.savedAt': 'saved {when}',
  'field.phone.sentAt': 'sent {when}',
  'field.phone.disputed':
    '{isSelf, select, true {{count, plural, one {You said something else elsewhere.} other {# times you said something else elsewhere.}}} other {{count, plural, one {Somebody else said something else.} other {# times somebody else said something else.}}}} {count, plural, one {It was sent, and the office decides.} other {They were sent, and the office decides.}}',
  'field.phone.seen': 'I have seen it',
  'field.phone.seenAt': 'Seen {when}',
  'field.phone.conflict': '{isSelf, select, true {You said something else {who}} other {{who} said something else}}; the office sees both.',
  'field.phone.parallel': 'Changed by {who} meanwhile; yours stands.',
  'field.phone.named': 'The office knows this phone as {name}.',
  'field.phone.bothSaid':
    '{label}: {isSelf, select, true {here you said {sent}, there {other}} other {you said {sent}, {by} said {other}}}.',
  'field.refused.correct': 'Correct it',
  'field.refused.setAside': 'Set aside',
  'field.refused.why': 'Why it is not sent again',
  'field.refused.whyNeeded': 'Write why, so that it can be understood later.',
  'field.refused.wasSetAside': 'Set aside {when}: {why}',
  'field.refused.saidAnew': 'Said anew since.',
  'field.refused.over': 'Refused and over',
  'field.refused.code.NOT_ALLOWED': 'You may not do this here. Ask the crew lead or the office.',
  'field.refused.code.NOT_FOUND': 'What it speaks of is not there any more, or was given to another crew. Ask the office.',
  'field.refused.code.VALUE_REFUSED': 'Something in it cannot be right. Correct it and save it again.',
  'field.refused.code.OPERATION_CONFLICT': 'The office has something else under the same name. Save it again, and it gets a new one.',
  'field.refused.code.OPERATION_UNKNOWN': 'The office’s server is older than this phone. Send it again when it was brought up to date.',
  'field.refused.code.DECIDED_MEANWHILE': 'Somebody decided it meanwhile. Look at both and tell the office.',
  'field.refused.code.UNFORESEEN': 'The server broke on it. Send it again; if it is refused again, tell the office.',
  'field.refused.code.TOO_LARGE': 'It is too large to be sent.',
  'field.refused.code.PICTURE_LOST': 'The picture is not on this phone any more. Take it again.',
  'field.phone.pictureWaits': 'its picture waits',
  'field.phone.room': 'Room on this phone: {used} of {whole} taken.',
  'field.phone.tight': 'The phone is getting full. Send while there is signal, and delete what you do not need.',
  'field.phone.full': 'The phone is full: photos cannot be taken, and words may not be kept. Make room before you type.',
  'field.phone.mayBeCleared':
    'The browser may clear what is on this phone when room is short or after weeks without use. Send while there is signal.',
  'field.phone.install':
    'Put Rillbook on the home screen: there the browser keeps what is saved, and it opens without signal. In the browser’s menu, or under its share button, choose to add this page to the home screen.',
  'field.phone.others':
    '{isNamed, select, true {{name} has} other {Somebody else has}} {count, plural, one {one thing} other {# things}} on this phone that the office does not have. {isNamed, select, true {Only {name} can send {count, plural, one {it} other {them}}: sign in as {name} here and open Today.} other {Only they can send {count, plural, one {it} other {them}}: they sign in here and open Today.}}',
  'field.phone.export': 'Save what was not sent as a file',
  'field.phone.resend': 'Send all of these once more',
  'field.phone.isReady':
    '{ready, plural, =0 {Not ready without signal yet: loading.} other {{isAll, select, true {Ready without signal.} other {Ready without signal: {ready} of {count} stops.}}}}',
  'field.phone.pagesNotKept':
    'Not ready without signal: this browser has not kept the pages yet. Wait a moment; if it stays so, open Rillbook outside a private window.',
  'field.today.notHere':
    '{day} is not on this phone, and could not be fetched. {count, plural, =0 {No day is on this phone yet: open Today once while there is signal.} other {These days are on it:}}',
  'field.phone.toldAt': 'As of {time}: no answer from the office since.',
  'field.photo.count': '{count, plural, =0 {Photo} one {# photo} other {# photos}}',
  'field.photo.before': '{count, plural, =0 {Photo before the work} one {# photo before the work} other {# photos before the work}}',
  'field.photo.after': '{count, plural, =0 {Photo after the work} one {# photo after the work} other {# photos after the work}}',
  'field.photo.noRoom': 'Photos need room, and the phone is full: what is left is kept for words. Make room, then take it again.',
  'field.photo.keepPlace': 'Keep where it was taken',
  'field.photo.noPlace': 'The photo is kept. It does not say where it was taken: the camera’s location may be off.',
  'field.photo.broken': 'This picture cannot be read. Take it again.',
  'field.what.photo': 'a photo',
  'field.phone.onlyHere':
    '{count, plural, one {One thing is} other {# things are}} only on this phone. Signing out deletes what is here: save it as a file first, and give the file to the office.',
  'field.phone.leaveAnyway': 'Delete what is here and sign out',
  'field.phone.newVersion': 'New version ready: it comes when you finish this visit.',
};
