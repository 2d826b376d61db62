#!/usr/bin/python3
"""A sweep as a Slurm job array on a cluster of one node, which this starts and ends: the same bytes as the sweep alone.

    slurm_array.py PROGRAMS EXAMPLE    folders: of the programs, and examples/many_machines
    exit 0: so it is; 1: it is not; 77: Slurm cannot start here, nothing was tested

Debian's packages slurmctld, slurmd, slurm-client and munge, and the rights of root, are needed; neither systemd nor cgroups.
"""
import os
import re
import shutil
import socket
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SKIPPED = 77
TASKS = 12


def skip(why):
    print(f"skipped, nothing was tested: {why}")
    sys.exit(SKIPPED)


def free_port():
    with socket.socket() as s:
        s.bind(("127.0.0.1", 0))
        return s.getsockname()[1]


def wait_for(what, condition, seconds=120):
    end = time.monotonic() + seconds
    while time.monotonic() < end:
        found = condition()
        if found:
            return found
        time.sleep(0.05)
    raise TimeoutError(what)


class Cluster:
    """munged, slurmctld and slurmd in the foreground, with all they write in one folder."""

    def __init__(self, folder):
        self.folder = folder
        self.daemons = []
        host = socket.gethostname().split(".")[0]
        conf = folder / "slurm.conf"
        conf.write_text(
            f"""ClusterName=test
SlurmctldHost={host}(127.0.0.1)
SlurmctldPort={free_port()}
SlurmdPort={free_port()}
AuthType=auth/munge
AuthInfo=socket={folder}/munge.socket
CredType=cred/munge
CryptoType=crypto/munge
SlurmUser=root
SlurmdUser=root
StateSaveLocation={folder}/state
SlurmdSpoolDir={folder}/spool
SlurmctldPidFile={folder}/slurmctld.pid
SlurmdPidFile={folder}/slurmd.pid
SlurmctldLogFile={folder}/slurmctld.log
SlurmdLogFile={folder}/slurmd.log
ProctrackType=proctrack/linuxproc
TaskPlugin=task/none
SwitchType=switch/none
MpiDefault=none
JobAcctGatherType=jobacct_gather/none
SelectType=select/cons_tres
SelectTypeParameters=CR_CPU
SchedulerParameters=sched_interval=1,batch_sched_delay=0
ReturnToService=2
SlurmdParameters=config_overrides
NodeName={host} NodeAddr=127.0.0.1 CPUs=2 State=UNKNOWN
PartitionName=all Nodes={host} Default=YES MaxTime=INFINITE State=UP
"""
        )
        (folder / "state").mkdir()
        (folder / "spool").mkdir()
        (folder / "munge.key").write_bytes(os.urandom(128))
        (folder / "munge.key").chmod(0o400)
        self.environment = {**os.environ, "SLURM_CONF": str(conf)}

    def start(self, words):
        log = open(self.folder / (Path(words[0]).name + ".out"), "w")
        self.daemons.append(
            subprocess.Popen(words, stdout=log, stderr=log, env=self.environment, start_new_session=True)
        )

    def __enter__(self):
        f = self.folder
        self.start(
            ["munged", "-F", "--force", f"--key-file={f}/munge.key", f"--socket={f}/munge.socket"]
            + [f"--pid-file={f}/munge.pid", f"--log-file={f}/munge.log", f"--seed-file={f}/munge.seed"]
        )
        try:
            wait_for("munged", (f / "munge.socket").exists, 20)
            self.start(["slurmctld", "-D", "-f", f"{f}/slurm.conf"])
            self.start(["slurmd", "-D", "-f", f"{f}/slurm.conf"])
            wait_for("an idle node", lambda: "idle" in self.say(["sinfo", "-h", "-o", "%T"], check=False), 60)
        except TimeoutError as waited:
            logs = "\n".join(p.read_text(errors="replace")[-600:] for p in sorted(f.glob("*.log")) + sorted(f.glob("*.out")))
            self.__exit__()
            skip(f"{waited} did not come:\n{logs}")
        return self

    def __exit__(self, *_):
        for daemon in reversed(self.daemons):
            daemon.terminate()
        for daemon in self.daemons:
            try:
                daemon.wait(20)
            except subprocess.TimeoutExpired:
                daemon.kill()

    def say(self, words, check=True, **more):
        done = subprocess.run(words, env={**self.environment, **more}, cwd=self.folder, text=True, capture_output=True)
        if check and done.returncode:
            raise RuntimeError(f"{words}: {done.returncode}\n{done.stdout}{done.stderr}")
        return done.stdout

    def standing(self, task):
        found = re.search(r"JobState=(\w+)", self.say(["scontrol", "show", "job", task], check=False))
        return found[1] if found else ""


def write_plan(folder, name, method, years):
    """Two bores that warm a house, in variants; invented."""
    (folder / "site.yaml").write_text(
        f"""title: Two bores
ground:
  layers: [{{material: gneiss, conductivity: 2.9 W/(m K), heat_capacity: 2.2 MJ/(m3 K)}}]
  undisturbed: {{mean_over_bore: 10 degC}}
bore:
  top: 1.5 m
  depth: 60 m
  diameter: 140 mm
  pipe: {{outer_diameter: 40 mm, wall: 3.7 mm, conductivity: 0.42 W/(m K)}}
  leg_spacing: 70 mm
  grout: {{conductivity: 1.5 W/(m K), heat_capacity: 2.9 MJ/(m3 K)}}
field: {{grid: {{rows: 1, columns: 2, spacing: 6 m}}}}
fluid: {{base: propylene glycol, mass_fraction: 0.25}}
flow: {{per_bore: 0.4 L/s, runs: always}}
loads: {{to_ground: -2 kW}}
run: {{start: 2027-07, years: {years}}}
limits: {{eft_min: 0 degC}}
"""
    )
    (folder / name).write_text(
        f"""scenario: site.yaml
method: {method}
vary:
  bore.depth: [50 m, 60 m, 70 m, 80 m]
  bore.grout.conductivity: [0.8 W/(m K), 1.2 W/(m K), 1.6 W/(m K)]
"""
    )


def killed_and_requeued(cluster, job):
    """Kills the first task that is seen at work, and puts it back into the queue. Its name."""

    def running():
        tasks = cluster.say(["squeue", "-h", "-r", "-t", "RUNNING", "-j", job, "-o", "%i"], check=False).split()
        return tasks[0] if tasks else None

    wait_for("a march", lambda: any(cluster.folder.glob("*/results/*/*.h5.part")))
    task = wait_for("a running task", running)
    cluster.say(["scancel", "--signal=KILL", "--full", task])
    wait_for("the kill", lambda: cluster.standing(task) in ("FAILED", "CANCELLED", "COMPLETED"))
    print(f"task {task} was killed: {cluster.standing(task)}")
    if cluster.standing(task) == "COMPLETED":
        raise RuntimeError("the task had ended before it could be killed: nothing was tested")
    cluster.say(["scontrol", "requeue", task])
    cluster.say(["scontrol", "update", f"JobId={task}", "StartTime=now"])  # not in two minutes
    return task


def array_with_a_kill(cluster, example, environment):
    job = cluster.say(
        ["sbatch", "--parsable", "--export=ALL", f"--array=1-{TASKS}", str(example / "points.sbatch")], **environment
    ).strip()
    killed_and_requeued(cluster, job)
    wait_for("the array's end", lambda: not cluster.say(["squeue", "-h", "-j", job], check=False).strip(), 600)


def main(programs, example):
    if os.geteuid() != 0:
        skip("not root")
    for program in ("munged", "slurmctld", "slurmd", "sbatch", "scontrol"):
        if not shutil.which(program):
            skip(f"there is no {program} (packages munge, slurmctld, slurmd, slurm-client)")
    stillground = str(programs / "stillground")
    with tempfile.TemporaryDirectory(prefix="stillground-slurm-") as scratch, Cluster(Path(scratch)) as cluster:
        folder = Path(scratch)
        for plan, method, years, work in (
            ("marched.yaml", "march", 6, array_with_a_kill),
            ("both.yaml", "screening, then march the best 2", 3, lambda c, e, env: c.say([str(e / "submit")], **env)),
        ):
            write_plan(folder, plan, method, years)
            work(cluster, example, {"PLAN": plan, "FOLDER": plan + ".array", "STILLGROUND": stillground})
            gathered = cluster.say([stillground, "sweep", plan, "-o", plan + ".array", "--gather"])
            cluster.say([stillground, "sweep", plan, "-o", plan + ".alone"])
            summaries = [(folder / (plan + end) / "summary.csv").read_bytes() for end in (".array", ".alone")]
            rows = summaries[0].count(b"\n") - 1
            print(f"{plan}: {rows} points, {'the same' if summaries[0] == summaries[1] else 'ANOTHER'} summary")
            if summaries[0] != summaries[1] or rows != TASKS or "Missing" in gathered or "yet" in gathered:
                print(gathered, *(s.decode() for s in summaries), sep="\n")
                return 1
    return 0


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]).resolve(), Path(sys.argv[2]).resolve()))
