//! What a run of the program cost: time, processor time, peak memory.

use std::process::{Child, Command, Stdio};
use std::thread::sleep;
use std::time::{Duration, Instant};

/// Ticks of the processor clock a second, as Linux counts them for programs.
const TICKS: f64 = 100.0;

/// What one run cost. Processor time and memory are known on Linux only.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Cost {
    /// Time on the wall, s.
    pub wall: f64,
    /// Processor time of all threads, s.
    pub processor: f64,
    /// Peak of resident memory, MB.
    pub peak: f64,
}

/// Runs a command to its end. While it runs its peak is read every few milliseconds; its processor
/// time is read when it has ended and before it is reaped.
pub(crate) fn run(command: &mut Command) -> Cost {
    let begun = Instant::now();
    let mut child = command
        .stdout(Stdio::null())
        .stderr(Stdio::null())
        .spawn()
        .expect("the program starts");
    let mut cost = Cost::default();
    if cfg!(target_os = "linux") {
        while !has_ended(&child) {
            cost.peak = peak(&child).max(cost.peak);
            sleep(Duration::from_millis(2));
        }
        cost.processor = processor(child.id());
    }
    child.wait().expect("the program ends");
    cost.wall = begun.elapsed().as_secs_f64();
    cost
}

/// The fields of `/proc/PID/stat` behind the name of the program, which may hold anything.
fn fields(process: u32) -> Vec<String> {
    let stat = std::fs::read_to_string(format!("/proc/{process}/stat")).unwrap_or_default();
    let behind = stat.rsplit(')').next().unwrap_or_default();
    behind.split_whitespace().map(str::to_owned).collect()
}

fn has_ended(child: &Child) -> bool {
    fields(child.id()).first().is_none_or(|state| state == "Z")
}

/// Processor time of a process so far, in s: user and system.
pub(crate) fn processor(process: u32) -> f64 {
    let fields = fields(process);
    let ticks = |place: usize| -> f64 {
        let field = fields.get(place).and_then(|field| field.parse().ok());
        field.unwrap_or(0.0)
    };
    (ticks(11) + ticks(12)) / TICKS
}

fn peak(child: &Child) -> f64 {
    let status = format!("/proc/{}/status", child.id());
    let status = std::fs::read_to_string(status).unwrap_or_default();
    let line = status.lines().find_map(|line| line.strip_prefix("VmHWM:"));
    let kilobytes = line.and_then(|line| line.trim().strip_suffix(" kB")?.trim().parse().ok());
    kilobytes.unwrap_or(0.0) / 1000.0
}
