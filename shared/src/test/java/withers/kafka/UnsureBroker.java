package withers.kafka;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.util.Arrays;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.kafka.common.protocol.ApiKeys;
import org.apache.kafka.common.protocol.Errors;
import org.jspecify.annotations.Nullable;

/**
 * A running broker, reached by a stretch of network that can make it answer the end of a
 * transaction with an error that has no name, whatever became of the transaction. Requests and
 * answers are laid out as Kafka's protocol guide has it.
 */
public final class UnsureBroker implements AutoCloseable {

  /** What becomes of a transaction that a client asks to have committed. */
  public enum Fate {
    COMMITTED,
    ABORTED
  }

  private static final String HOST = "127.0.0.1";

  /** Behind a request's kind and version, two bytes each. */
  private static final int NUMBER_OF_REQUEST = 4;

  /** Behind an answer's number, its tags (none: one byte) and four bytes of throttling. */
  private static final int ERROR_OF_ANSWER = 9;

  private final ServerSocket listening;
  private final byte[] brokersAddress;
  private final byte[] ownAddress;
  private final int brokersPort;
  private final AtomicReference<@Nullable Fate> next = new AtomicReference<>();
  private final AtomicInteger unsure = new AtomicInteger();
  private final Set<Socket> open = ConcurrentHashMap.newKeySet();

  /**
   * @param address the broker's, on this machine
   */
  public UnsureBroker(String address) throws IOException {
    listening = new ServerSocket(0, 50, InetAddress.getLoopbackAddress());
    brokersPort = Integer.parseInt(address.substring(address.indexOf(':') + 1));
    brokersAddress = written(brokersPort);
    ownAddress = written(listening.getLocalPort());
    start(this::accept);
  }

  private static byte[] written(int port) {
    byte[] host = HOST.getBytes(US_ASCII);
    return ByteBuffer.allocate(host.length + Integer.BYTES).put(host).putInt(port).array();
  }

  /** Where clients find it. */
  public String address() {
    return HOST + ":" + listening.getLocalPort();
  }

  /** Answers the next end of a transaction without a name, after this has become of it. */
  public void answerNextWithoutAName(Fate fate) {
    next.set(fate);
  }

  /** How many answers had no name so far. */
  public int answersWithoutAName() {
    return unsure.get();
  }

  private void accept() {
    while (!listening.isClosed()) {
      try {
        connect(listening.accept());
      } catch (IOException closed) {
        close();
      }
    }
  }

  private void connect(Socket client) throws IOException {
    Socket broker = new Socket(InetAddress.getLoopbackAddress(), brokersPort);
    open.add(client);
    open.add(broker);
    Set<Integer> changed = ConcurrentHashMap.newKeySet();
    start(() -> pass(client, broker, request -> changeRequest(request, changed)));
    start(() -> pass(broker, client, answer -> changeAnswer(answer, changed)));
  }

  /** May change a message, but not its length. */
  @FunctionalInterface
  private interface Change {
    void of(byte[] message);
  }

  private void pass(Socket from, Socket to, Change change) {
    try (from;
        to) {
      DataInputStream in = new DataInputStream(from.getInputStream());
      DataOutputStream out = new DataOutputStream(to.getOutputStream());
      while (true) {
        byte[] message = in.readNBytes(in.readInt());
        change.of(message);
        out.write(
            ByteBuffer.allocate(4 + message.length).putInt(message.length).put(message).array());
      }
    } catch (IOException over) {
      open.remove(from);
    }
    open.remove(to);
  }

  private void changeRequest(byte[] request, Set<Integer> changed) {
    ByteBuffer head = ByteBuffer.wrap(request);
    boolean end = head.getShort(0) == ApiKeys.END_TXN.id;
    @Nullable Fate fate = end ? next.getAndSet(null) : null;
    if (fate != null) {
      changed.add(head.getInt(NUMBER_OF_REQUEST));
      // the last before the tags (none: one byte) says whether to commit
      request[request.length - 2] = (byte) (fate == Fate.COMMITTED ? 1 : 0);
    }
  }

  private void changeAnswer(byte[] answer, Set<Integer> changed) {
    ByteBuffer head = ByteBuffer.wrap(answer);
    if (changed.remove(head.getInt(0))) {
      head.putShort(ERROR_OF_ANSWER, Errors.UNKNOWN_SERVER_ERROR.code());
      unsure.incrementAndGet();
    }
    leadHere(answer);
  }

  // A broker tells clients its own address, and they would find their way around this one.
  private void leadHere(byte[] answer) {
    int length = brokersAddress.length;
    for (int at = 0; at + length <= answer.length; at++) {
      if (Arrays.equals(answer, at, at + length, brokersAddress, 0, length)) {
        System.arraycopy(ownAddress, 0, answer, at, length);
      }
    }
  }

  private static void start(Runnable work) {
    Thread thread = new Thread(work, "unsure broker");
    thread.setDaemon(true);
    thread.start();
  }

  @Override
  public void close() {
    try {
      listening.close();
      for (Socket one : open) {
        one.close();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
