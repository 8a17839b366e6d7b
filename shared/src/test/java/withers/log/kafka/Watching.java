package withers.log.kafka;

import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import withers.kafka.ThreeBrokers;
import withers.log.EventLog;
import withers.log.LogUnavailableException;

/** Replays a log again and again while others write to it, and checks what it sees. */
final class Watching implements AutoCloseable {

  /** Leaves the machine to those who are watched. */
  private static final int PAUSE_MILLIS = 100;

  private final ThreeBrokers brokers;
  private final String prefix;
  private final Load load;
  private final AtomicInteger replays = new AtomicInteger();
  private final AtomicBoolean enough = new AtomicBoolean();
  private final CompletableFuture<Void> running;

  Watching(ThreeBrokers brokers, String prefix, Load load) {
    this.brokers = brokers;
    this.prefix = prefix;
    this.load = load;
    this.running = CompletableFuture.runAsync(this::watch);
  }

  private void watch() {
    while (!enough.get()) {
      try (EventLog log = brokers.log(prefix, ImportingClient.PATIENCE)) {
        while (!enough.get()) {
          load.check(log.snapshot());
          replays.incrementAndGet();
          TimeUnit.MILLISECONDS.sleep(PAUSE_MILLIS);
        }
      } catch (LogUnavailableException lost) {
        Thread.onSpinWait(); // until brokers are back
      } catch (InterruptedException e) {
        throw new IllegalStateException(e);
      }
    }
  }

  /** How many went to their end. */
  int replays() {
    return replays.get();
  }

  /** Fails when anything was seen that must not be. */
  @Override
  public void close() {
    enough.set(true);
    running.join();
  }
}
