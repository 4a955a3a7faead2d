-- What wrk asks a server: ASK=job (jobs by id, another each time), ASK=newest (the newest 50 of a busy machine) or ASK=save (one
-- entry into a job, another job and another entry each time; SIDE 0 or 1 takes every other job, so that no server writes into a job
-- of the other). RECORD is the folder that bench_record_fill made. Prints one line of JSON at the end; times are in microseconds.
local what, folder = os.getenv("ASK"), os.getenv("RECORD")

local function lines(name)
  local all = {}
  for line in io.lines(folder .. "/" .. name) do all[#all + 1] = line end
  return all
end

local ids, made, author = {}, {}, ""
local at, side = tonumber(os.getenv("FROM") or "0"), tonumber(os.getenv("SIDE") or "0")

function init()
  ids = lines(what == "newest" and "machines.txt" or "jobs.txt")
  author = lines("author.txt")[1]
  if what == "save" then return end
  for i, id in ipairs(ids) do
    local path = what == "newest" and "/api/machines/" .. id .. "/jobs" or "/api/jobs/" .. id:sub(1, 36)
    made[i] = wrk.format("GET", path)
  end
end

local function save()
  local id, follows = ids[(at * 2 + side) % #ids + 1]:match("(%S+) (%S+)")
  local entry = string.format(
    '{"entries":[{"id":"%08x-0000-7000-8000-%012x","by":"%s","on":"tablet 1","at":"2026-02-03T08:00:00.000Z",' ..
    '"follows":"%s","corrects":[],"body":{"kind":"note_written","part":{"part":"rotor","number":4},"stage":"booking_in",' ..
    '"text":"Oil between rotors 3 and 4"}}]}', os.time(), at, author, follows)
  return wrk.format("POST", "/api/jobs/" .. id .. "/entries", { ["Content-Type"] = "application/json" }, entry)
end

function request()
  at = at + 1
  if what == "save" then return save() end
  return made[at % #made + 1]
end

function done(summary, latency)
  local e = summary.errors
  io.write(string.format(
    '{"p50": %.1f, "p90": %.1f, "p99": %.1f, "rps": %.1f, "failed": %d}\n',
    latency:percentile(50), latency:percentile(90), latency:percentile(99),
    summary.requests / summary.duration * 1e6, e.connect + e.read + e.write + e.status + e.timeout))
end
