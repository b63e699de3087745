"""A whole bot, written from PROTOCOL.md alone: python3 bot.py 'http://localhost:8080/t/CODE#bot=SECRET' [ROUNDS]"""
import asyncio
import json
import sys
from urllib import parse, request

import websockets

link = parse.urlsplit(sys.argv[1])
rounds = int(sys.argv[2]) if len(sys.argv) > 2 else sys.maxsize
room = f"{link.scheme}://{link.netloc}/api/rooms/{link.path.split('/')[-1]}"
secret = link.fragment.replace("bot=", "", 1)
known = None  # The number of the last table, and that table.

def post(path, body):
    global secret
    headers = {"content-type": "application/json", "authorization": f"Bearer {secret}"}
    asked = request.Request(room + path, json.dumps(body).encode(), headers)
    answer = json.load(request.urlopen(asked, timeout=30))
    secret = answer.get("secret", secret)
    return answer

def apply(table, change):
    delta = change.pop("viewDelta", None)
    table = {**table, **change}
    if delta:
        steps = table["view"]["record"]["steps"] + delta.pop("steps")
        table["view"] = {**table["view"], **delta, "record": {**table["view"]["record"], "steps": steps}}
    return table

def choose(table):
    """What the open step wants of this seat; None where it wants nothing."""
    you, view = table["you"], table["view"]
    if you is None or not view or view["audience"] != "seat" or view["answer"]:
        return None
    stage = view["stage"]
    if stage["phase"] == "voting":
        return {"kind": "vote", "step": "vote", "go": True}
    if stage["phase"] == "asking":
        return {"kind": "ask", "step": "courtesy-ask", "count": 2}
    count = {"passing": 3, "giving": stage.get("counts", [0] * 4)[you]}.get(stage["phase"], 0)
    tiles = sorted((face for face in view["rack"] if face != "joker"), key=view["rack"].count)[:count]
    return {"kind": "pass", "step": stage.get("step", "courtesy-pass"), "tiles": tiles, "blind": 0} if tiles else None

async def talk():
    """Seconds until the next connection; None for none."""
    global known
    if link.fragment.endswith(secret):  # Still the invitation's: no claim has brought another.
        post("/bots", {"name": "Snake"})
    resume = {"resume": {"seq": known[0], "you": known[1]["you"]}} if known else {}
    hello = {"kind": "hello", "id": "h", "versions": [1, 1], "ticket": post("/ticket", {})["ticket"], **resume}
    async with websockets.connect(parse.urljoin(room, "/api/socket").replace("http", "ws", 1)) as socket:
        await socket.send(json.dumps(hello))
        while True:
            frame = json.loads(await asyncio.wait_for(socket.recv(), 45))
            if frame["kind"] == "rejected":
                print(frame["code"], frame["message"], file=sys.stderr)
            if frame["kind"] == "delta" and (not known or known[0] != frame["after"]):
                known = None
                return 0
            if frame["kind"] not in ("table", "delta"):
                continue
            table = frame["table"] if frame["kind"] == "table" else apply(known[1], frame["table"])
            known, number, view = (frame["seq"], table), table["round"], table["view"]
            if table["you"] is None or (view and view["stage"]["phase"] == "closed" and number >= rounds):
                return None
            if choice := choose(table):  # One id a question: said again, by this connection or the next, it counts once.
                command = {"id": f"{number} {choice['step']}", "round": number, "seat": table["you"]}
                await socket.send(json.dumps({"kind": "choose", **command, "choice": choice}))

async def main(pause=0):
    while pause is not None:
        await asyncio.sleep(pause)
        try:
            pause = await talk()
        except (OSError, asyncio.TimeoutError, websockets.ConnectionClosed) as end:
            print(end, getattr(end, "read", bytes)().decode(), file=sys.stderr)
            pause = None if getattr(end, "code", 0) in (400, 403, 404, 1001, 4003, 4004) else 2

asyncio.run(main())
