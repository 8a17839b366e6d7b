package withers.kafka;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;

/**
 * A stretch of network between clients and a broker, which can be cut after so many bytes: at the
 * same place of the clients' work on a fast machine and on a slow one.
 */
final class Wire implements AutoCloseable {
  private static final int BUFFER = 1 << 14;

  private final ServerSocket listening;
  private final Set<Socket> open = ConcurrentHashMap.newKeySet();
  private final AtomicLong sent = new AtomicLong();
  private volatile long cutAt = Long.MAX_VALUE;
  private volatile int broker;

  Wire() {
    try {
      listening = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  int port() {
    return listening.getLocalPort();
  }

  /** Leads to a broker on this port from now on. */
  void leadTo(int port) {
    broker = port;
    start(this::accept);
  }

  /** How many bytes clients have sent so far. */
  long sent() {
    return sent.get();
  }

  /** Cuts it when clients have sent so many bytes more. */
  void cutAfter(long bytes) {
    cutAt = sent.get() + bytes;
  }

  void mend() {
    cutAt = Long.MAX_VALUE;
  }

  boolean isCut() {
    return sent.get() >= cutAt;
  }

  private void accept() {
    while (!listening.isClosed()) {
      try {
        Socket client = listening.accept();
        if (isCut()) {
          client.close();
        } else {
          connect(client);
        }
      } catch (IOException closed) {
        cut();
      }
    }
  }

  private void connect(Socket client) throws IOException {
    Socket server = new Socket(InetAddress.getLoopbackAddress(), broker);
    open.add(client);
    open.add(server);
    start(() -> copy(client, server, sent));
    start(() -> copy(server, client, new AtomicLong()));
  }

  private void copy(Socket from, Socket to, AtomicLong count) {
    byte[] buffer = new byte[BUFFER];
    try (from;
        to) {
      InputStream in = from.getInputStream();
      OutputStream out = to.getOutputStream();
      for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) {
        count.addAndGet(read);
        if (isCut()) {
          cut();
          return;
        }
        out.write(buffer, 0, read);
      }
    } catch (IOException over) {
      open.remove(from);
    }
    open.remove(to);
  }

  private void cut() {
    open.forEach(Wire::end);
    open.clear();
  }

  private static void end(Socket socket) {
    try {
      socket.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void start(Runnable work) {
    Thread thread = new Thread(work, "wire");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() throws IOException {
    listening.close();
    cut();
  }
}
