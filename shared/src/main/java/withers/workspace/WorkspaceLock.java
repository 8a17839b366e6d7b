package withers.workspace;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The right to write to a workspace, for one command at a time, or to keep its schedule. Held until
 * it is closed or its process ends, however it ends. On network file systems it is as good as their
 * file locks are.
 */
public final class WorkspaceLock implements AutoCloseable {
  // A system that ties file locks to processes drops them as soon as any channel on the file
  // closes: within this
  // JVM a second attempt must not even open the file.
  private static final Set<Path> HELD_HERE = ConcurrentHashMap.newKeySet();

  private final Path key;
  private final Path holder;
  private final FileChannel channel;

  private WorkspaceLock(Path key, Path holder, FileChannel channel) {
    this.key = key;
    this.holder = holder;
    this.channel = channel;
  }

  /**
   * Takes a lock without waiting.
   *
   * @param words who takes it, for those who are refused meanwhile
   * @throws WorkspaceBusyException when it is taken
   */
  static WorkspaceLock take(LockFiles files, String words) throws IOException {
    Path key = key(files);
    if (!HELD_HERE.add(key)) {
      throw files.busy();
    }
    try {
      return new WorkspaceLock(key, files.holder(), lockedChannel(files)).announce(words);
    } catch (IOException | RuntimeException failed) {
      HELD_HERE.remove(key);
      throw failed;
    }
  }

  private static Path key(LockFiles files) throws IOException {
    return files.lock().resolveSibling("").toRealPath();
  }

  /** Whether this process has taken a lock, in whichever of its threads, and not given it back. */
  static boolean isHeldHere(LockFiles files) throws IOException {
    return HELD_HERE.contains(key(files));
  }

  @SuppressWarnings("resource") // closing the channel is what gives the lock back
  private static FileChannel lockedChannel(LockFiles files) throws IOException {
    FileChannel channel =
        OwnerOnly.open(files.lock(), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      if (channel.tryLock() != null) {
        return channel;
      }
    } catch (IOException | RuntimeException failed) {
      channel.close();
      throw failed;
    }
    channel.close();
    throw files.busy();
  }

  private WorkspaceLock announce(String words) throws IOException {
    try {
      OwnerOnly.replace(holder, words.getBytes(StandardCharsets.UTF_8));
      return this;
    } catch (IOException | RuntimeException failed) {
      channel.close();
      throw failed;
    }
  }

  /** Whether the lock has not been given back yet. */
  public boolean isHeld() {
    return channel.isOpen();
  }

  @Override
  public void close() {
    if (!isHeld()) {
      return;
    }
    try {
      Files.deleteIfExists(holder);
      channel.close();
    } catch (IOException e) {
      throw new UncheckedIOException("The workspace's lock can't be given back", e);
    } finally {
      HELD_HERE.remove(key);
    }
  }
}
