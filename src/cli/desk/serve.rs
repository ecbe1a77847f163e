//! The server: connections on this machine, so many at a time, each one question and one answer.

use std::io::Result;
use std::net;
use std::sync::Arc;
use std::time::Duration;

use axum::Router;
use hyper::server::conn::http1;
use hyper_util::rt::{TokioIo, TokioTimer};
use hyper_util::service::TowerToHyperService;
use tokio::net::{TcpListener, TcpStream};
use tokio::runtime::Builder;
use tokio::sync::Semaphore;
use tokio::time::sleep;
use tokio_io_timeout::TimeoutStream;

/// Longest wait for a browser that is slow to ask, and for one that is slow to take what it asked for.
pub const PATIENCE: Duration = Duration::from_secs(5);
/// Most connections at a time.
const MOST_CLIENTS: usize = 128;
/// Most answers that are worked out at a time.
const MOST_WORK: usize = 8;
/// Longest head of a question.
const LONGEST_HEAD: usize = 16 * 1024;
/// How long to wait for another browser where the system has no room for one now.
const PAUSE: Duration = Duration::from_millis(50);

/// Answers browsers as long as the program runs.
pub fn serve(listener: net::TcpListener, routes: Router) -> Result<()> {
    listener.set_nonblocking(true)?;
    let runtime = Builder::new_multi_thread().worker_threads(2).max_blocking_threads(MOST_WORK).enable_all().build()?;
    runtime.block_on(async {
        let listener = TcpListener::from_std(listener)?;
        let room = Arc::new(Semaphore::new(MOST_CLIENTS));
        loop {
            let Ok((stream, _)) = listener.accept().await else {
                sleep(PAUSE).await;
                continue;
            };
            // Where there is no room the connection is dropped at once: the page asks again.
            if let Ok(place) = Arc::clone(&room).try_acquire_owned() {
                let routes = routes.clone();
                tokio::spawn(async move {
                    answer(stream, routes).await;
                    drop(place);
                });
            }
        }
    })
}

/// Answers one question of one browser; one that goes away in the middle is no reason to stop.
async fn answer(stream: TcpStream, routes: Router) {
    let mut stream = TimeoutStream::new(stream);
    stream.set_write_timeout(Some(PATIENCE));
    let connection = http1::Builder::new()
        .timer(TokioTimer::new())
        .header_read_timeout(PATIENCE)
        .max_buf_size(LONGEST_HEAD)
        .keep_alive(false)
        .serve_connection(TokioIo::new(Box::pin(stream)), TowerToHyperService::new(routes));
    let _ = connection.await;
}
