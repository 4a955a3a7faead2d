#!/usr/bin/env python3
"""Holds the server of the record against a peer on the same database: docs/speed.md says how to run and read it.

Makes a record of a million invented jobs where there is none yet, starts the server and the peer, sees that both answer with the
same bytes, then lets wrk ask them in turn, round by round, and prints medians, ratios and what else the machine did meanwhile.
"""

import argparse
import http.client
import json
import os
import shutil
import socket
import statistics
import subprocess
import sys
import time
from pathlib import Path

HERE = Path(__file__).resolve().parent
PROJECT = HERE.parent.parent

# What is asked, connections, target: (figure, limit), least ratio to the peer.
LINES = [
    ("job", 1, ("p50", 40.0), None),
    ("job", 16, ("rps", 50_000.0), 2.0),
    ("newest", 1, ("p50", 110.0), None),
    ("newest", 16, None, None),
    ("save", 1, None, None),
]
NAMES = {"job": "job by id", "newest": "newest 50 of a machine", "save": "one entry saved"}
# Where the machine's own limit is asked too: bench_record_hello, which does nothing but answer.
LIMIT = "hello"


def free_port():
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        return s.getsockname()[1]


def fill(build, record, count):
    if (record / "record.db").exists():
        return
    started = time.monotonic()
    subprocess.run([build / "bench/bench_record_fill", record, str(count), PROJECT], check=True)
    print(f"filled in {time.monotonic() - started:.0f} s")


def get(port, path):
    connection = http.client.HTTPConnection("127.0.0.1", port, timeout=10)
    connection.request("GET", path)
    reply = connection.getresponse()
    return reply.status, reply.read()


def wait_for(port):
    for _ in range(200):
        try:
            socket.create_connection(("127.0.0.1", port), 1).close()
            return
        except OSError:
            time.sleep(0.05)
    sys.exit(f"nothing listens at port {port}")


def same_bytes(ports, record, count=100):
    """Both must give the same before their speed is worth a look."""
    jobs = [line.split()[0] for line in (record / "jobs.txt").read_text().splitlines()[:count]]
    machines = (record / "machines.txt").read_text().split()
    for path in [f"/api/jobs/{j}" for j in jobs] + [f"/api/machines/{m}/jobs" for m in machines]:
        replies = {name: get(port, path) for name, port in ports.items()}
        first = next(iter(replies.values()))
        if first[0] != 200 or any(r != first for r in replies.values()):
            sys.exit(f"{path}: not the same answers: {replies}")
    print(f"same bytes: {len(jobs)} jobs, {len(machines)} lists")


def busy_ticks():
    """What all processors have worked so far, in ticks."""
    user, nice, system, _, _, irq, soft, steal = map(int, Path("/proc/stat").read_text().split("\n")[0].split()[1:9])
    return user + nice + system + irq + soft + steal


def own_ticks(pid):
    fields = Path(f"/proc/{pid}/stat").read_text().rsplit(")", 1)[1].split()
    return int(fields[11]) + int(fields[12])


def ask(what, connections, port, record, seconds, start, side):
    environment = dict(os.environ, ASK=what, RECORD=str(record), FROM=str(start), SIDE=str(int(side)))
    command = ["wrk", "-t1", f"-c{connections}", f"-d{seconds}s", "-s", str(HERE / "ask.lua"), f"http://127.0.0.1:{port}"]
    before = os.times()
    out = subprocess.run(command, env=environment, capture_output=True, text=True, check=True).stdout
    after = os.times()
    asked = json.loads(out.strip().split("\n")[-1])
    asked["wrk"] = after.children_user + after.children_system - before.children_user - before.children_system
    if asked["failed"]:
        sys.exit(f"{what}: {asked['failed']} requests failed at port {port}")
    return asked


def round_of(servers, record, seconds, number, results, others):
    for index, (what, connections, *_) in enumerate(LINES):
        turn = list(servers.items())
        if number % 2:
            turn.reverse()  # So that none always comes after the other.
        for name, (port, pid) in turn:
            if name == LIMIT and what != "job":
                continue
            begun, all_before, own_before = time.monotonic(), busy_ticks(), own_ticks(pid)
            # Each round writes into other jobs, so that none grows.
            asked = ask(what, connections, port, record, seconds, 9973 * (number + 1), name == "peer")
            length = time.monotonic() - begun
            worked = (own_ticks(pid) - own_before) / os.sysconf("SC_CLK_TCK")
            count = asked["rps"] * seconds
            asked["work"] = worked / count * 1e6  # Of the server for one request, in µs.
            own = worked + asked["wrk"]
            asked["wrk"] *= 1e6 / count
            others.append(((busy_ticks() - all_before) / os.sysconf("SC_CLK_TCK") - own) / length)
            results.setdefault((index, name), []).append(asked)


def show_limit(results):
    """What is there to win: the same requests answered by a server that only says hello, and what wrk itself works for each."""
    for index, (what, connections, *_) in enumerate(LINES):
        if (index, LIMIT) not in results:
            continue
        own, hello = ({f: middle(results, index, n, f) for f in ("work", "wrk", "rps")} for n in ("own", LIMIT))
        print(f"{NAMES[what]}, {connections}: hello works {hello['work']:.1f} µs ({hello['rps']:.0f} a second), the server "
              f"{own['work']:.1f}; wrk itself {own['wrk']:.1f}: with a processor each for it and the server "
              f"{1e6 / max(own['work'], own['wrk']):.0f} a second at the most")


def middle(results, index, name, figure):
    return statistics.median(r[figure] for r in results[index, name])


def show(results):
    one = f"{'p50 µs':>8}{'p99 µs':>8}{'work µs':>8}{'a second':>9}"
    head = f"{'':38}{one}   peer:{one}   times (by work)"
    print(head)
    for index, (what, connections, target, least_ratio) in enumerate(LINES):
        own, peer = ({f: middle(results, index, n, f) for f in ("p50", "p99", "work", "rps")} for n in ("own", "peer"))
        ratio = own["rps"] / peer["rps"] if connections > 1 else peer["p50"] / own["p50"]
        name = f"{NAMES[what]}, {connections} connection{'s' if connections > 1 else ''}"
        figures = ["".join(f"{o[f]:{w}.0f}" for f, w in (("p50", 8), ("p99", 8), ("work", 8), ("rps", 9))) for o in (own, peer)]
        text = f"{name:38}{figures[0]}        {figures[1]}   {ratio:.2f} ({peer['work'] / own['work']:.2f})"
        if target:
            figure, limit = target
            best = (min if figure == "p50" else max)(r[figure] for r in results[index, "own"])
            met = own[figure] <= limit if figure == "p50" else own[figure] >= limit
            text += f"   target {figure} {limit:.0f}: {'met' if met else 'MISSED'} (best round {best:.0f})"
        if least_ratio:
            text += f", {least_ratio:.0f} times: {'met' if ratio >= least_ratio else 'MISSED'}"
        print(text)


def main():
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--build", type=Path, default=PROJECT / "build/release", help="folder of a release build with bench")
    options.add_argument("--record", type=Path, default=PROJECT / "build/bench-record", help="where the million jobs are or go")
    options.add_argument("--jobs", type=int, default=1_000_000)
    options.add_argument("--rounds", type=int, default=5)
    options.add_argument("--seconds", type=int, default=3, help="of each line in each round")
    given = options.parse_args()
    if not shutil.which("wrk"):
        sys.exit("wrk is not installed: apt-get install wrk")
    if not (HERE / "peer/node_modules").exists():
        subprocess.run(["npm", "ci", "--no-audit", "--no-fund"], cwd=HERE / "peer", check=True)
    fill(given.build, given.record, given.jobs)
    ports = {"own": free_port(), "peer": free_port()}
    hello_port = free_port()
    quiet = {"stdout": subprocess.DEVNULL}
    own = subprocess.Popen(
        [given.build / "cli/flatwise", "serve", "--data", given.record, "--port", str(ports["own"])], **quiet)
    peer = subprocess.Popen(["node", HERE / "peer/server.js", given.record, str(ports["peer"])], **quiet)
    hello = subprocess.Popen([given.build / "bench/bench_record_hello", str(hello_port)], **quiet)
    try:
        for port in (*ports.values(), hello_port):
            wait_for(port)
        same_bytes(ports, given.record)
        servers = {"own": (ports["own"], own.pid), "peer": (ports["peer"], peer.pid), LIMIT: (hello_port, hello.pid)}
        results, others = {}, []
        for number in range(given.rounds):
            round_of(servers, given.record, given.seconds, number, results, others)
        show(results)
        show_limit(results)
        print("load average " + " ".join(f"{a:.1f}" for a in os.getloadavg()))
        print(f"{given.rounds} rounds of {given.seconds} s; others used {statistics.median(others):.2f} processors "
              f"(median; {min(others):.2f} to {max(others):.2f}) of {os.cpu_count()}")
    finally:
        for server in (own, peer, hello):
            server.terminate()
            server.wait()


if __name__ == "__main__":
    main()
