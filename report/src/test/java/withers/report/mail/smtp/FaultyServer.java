package withers.report.mail.smtp;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.net.SocketException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLSocket;

/**
 * A mail server on this machine that fails as it is told to, at any stage of a conversation (RFC
 * 5321). It takes one connection at a time, and keeps what it took over.
 */
public final class FaultyServer implements AutoCloseable {

  /** Instead of an answer: the connection ends. */
  public static final String DROP = "drop";

  /** Instead of an answer: nothing at all comes. */
  public static final String SILENCE = "silence";

  /** No fault this time. */
  public static final String AS_USUAL = "";

  /** When a client waits for an answer, or is just speaking. */
  public enum Stage {
    GREETING,
    EHLO,
    AUTH,
    MAIL,
    RCPT,
    DATA,
    CONTENT,
    DOT
  }

  /** A mail that was taken over. */
  public record Taken(String from, String to, String content) {}

  private record When(Stage stage, String to) {}

  private static final String ANYBODY = "";

  private final ServerSocket socket;
  private final Optional<SSLContext> tls;
  private final boolean tlsAtOnce;
  private final Map<When, Deque<String>> faults = new HashMap<>();
  private final List<Taken> taken = Collections.synchronizedList(new ArrayList<>());
  private final List<String> heard = Collections.synchronizedList(new ArrayList<>());
  private volatile Runnable atTheEnd = () -> {};
  private volatile boolean isForgetful;

  private FaultyServer(Optional<SSLContext> tls, boolean tlsAtOnce) throws IOException {
    this.tls = tls;
    this.tlsAtOnce = tlsAtOnce;
    this.socket = new ServerSocket(0, 50, InetAddress.getByName("localhost"));
    Thread thread = new Thread(this::serve, "faulty-server");
    thread.setDaemon(true);
    thread.start();
  }

  /** Without encryption. */
  public static FaultyServer plain() throws IOException {
    return new FaultyServer(Optional.empty(), false);
  }

  /** Without encryption; it keeps whose mails it took over, and nothing of what they said. */
  public static FaultyServer forgetful() throws IOException {
    FaultyServer server = plain();
    server.isForgetful = true;
    return server;
  }

  static FaultyServer withStartTls(SSLContext tls) throws IOException {
    return new FaultyServer(Optional.of(tls), false);
  }

  static FaultyServer withTls(SSLContext tls) throws IOException {
    return new FaultyServer(Optional.of(tls), true);
  }

  /** Answers so, once each, the next times that a conversation comes to this stage. */
  public FaultyServer answering(Stage stage, String... answers) {
    return answering(ANYBODY, stage, answers);
  }

  /** Answers so when the mail is for this address; known from {@link Stage#RCPT} on. */
  public synchronized FaultyServer answering(String to, Stage stage, String... answers) {
    faults
        .computeIfAbsent(new When(stage, to), none -> new ArrayDeque<>())
        .addAll(List.of(answers));
    return this;
  }

  /** Does this when a mail is there whole, before it is answered. */
  public FaultyServer atTheEnd(Runnable action) {
    atTheEnd = action;
    return this;
  }

  public int port() {
    return socket.getLocalPort();
  }

  /** What was taken over so far; a mail that ended and whose answer was lost is among it. */
  public List<Taken> taken() {
    return List.copyOf(taken);
  }

  /** The commands that came, without the mails. */
  List<String> heard() {
    return List.copyOf(heard);
  }

  private synchronized String fault(Stage stage, String to) {
    for (String who : List.of(to, ANYBODY)) {
      Deque<String> left = faults.get(new When(stage, who));
      if (left != null && !left.isEmpty()) {
        return left.removeFirst();
      }
    }
    return AS_USUAL;
  }

  private void serve() {
    while (!socket.isClosed()) {
      try (Socket client = socket.accept()) {
        new Conversation(tlsAtOnce ? encrypted(client) : client).hold();
      } catch (SocketException closed) {
        // The client or this server has gone.
      } catch (IOException e) {
        if (!(e instanceof javax.net.ssl.SSLException)) {
          throw new UncheckedIOException(e);
        }
      }
    }
  }

  private Socket encrypted(Socket plain) throws IOException {
    SSLSocket socket =
        (SSLSocket) tls.orElseThrow().getSocketFactory().createSocket(plain, "localhost", 0, true);
    socket.setUseClientMode(false);
    socket.startHandshake();
    return socket;
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }

  /** Tells that the connection is to end. */
  private static final class Dropped extends IOException {
    private static final long serialVersionUID = 1L;
  }

  private final class Conversation {
    private Socket client;
    private InputStream in;
    private String from = "";
    private String to = ANYBODY;
    private boolean isOver;

    Conversation(Socket client) throws IOException {
      this.client = client;
      this.in = buffered(client);
    }

    /** Asking the system for each byte of a mail would take longer than all that is measured. */
    private static InputStream buffered(Socket client) throws IOException {
      return new BufferedInputStream(client.getInputStream());
    }

    void hold() throws IOException {
      try {
        answer(Stage.GREETING, "220 faulty.example.org");
        while (!isOver) {
          Optional<String> line = line();
          if (line.isEmpty()) {
            return;
          }
          heard.add(line.get());
          follow(line.get());
        }
      } catch (Dropped drop) {
        client.setSoLinger(true, 0);
      } finally {
        client.close();
      }
    }

    private void follow(String line) throws IOException {
      switch (line.toUpperCase(Locale.ROOT).split("[ :]")[0]) {
        case "EHLO" -> answer(Stage.EHLO, greeting());
        case "STARTTLS" -> {
          say("220 go on");
          client = encrypted(client);
          in = buffered(client);
        }
        case "AUTH" -> answer(Stage.AUTH, "235 welcome");
        case "MAIL" -> {
          from = address(line);
          answer(Stage.MAIL, "250 sender is known");
        }
        case "RCPT" -> {
          to = address(line);
          answer(Stage.RCPT, "250 recipient is known");
        }
        case "DATA" -> {
          if (answer(Stage.DATA, "354 go on")) {
            content();
          }
        }
        case "RSET", "NOOP" -> say("250 well");
        case "QUIT" -> {
          say("221 bye");
          isOver = true;
        }
        default -> say("500 what?");
      }
    }

    private String greeting() {
      boolean offers = tls.isPresent() && !(client instanceof SSLSocket);
      return "250-faulty.example.org\r\n" + (offers ? "250-STARTTLS\r\n" : "") + "250 AUTH PLAIN";
    }

    private void content() throws IOException {
      if (fault(Stage.CONTENT, to).equals(DROP)) {
        line();
        throw new Dropped();
      }
      StringBuilder content = new StringBuilder();
      Optional<String> line = line();
      while (line.isPresent() && !line.get().equals(".")) {
        content.append(line.get().startsWith(".") ? line.get().substring(1) : line.get());
        content.append("\r\n");
        line = line();
      }
      String fault = fault(Stage.DOT, to);
      if (fault.isEmpty() || fault.equals(DROP) || fault.equals(SILENCE)) {
        taken.add(new Taken(from, to, isForgetful ? "" : content.toString()));
      }
      atTheEnd.run();
      answer(fault, "250 2.0.0 queued for <" + to + ">");
    }

    private static String address(String line) {
      return line.substring(line.indexOf('<') + 1, line.indexOf('>'));
    }

    /** Answers, and says whether it was the usual answer. */
    private boolean answer(Stage stage, String usual) throws IOException {
      return answer(fault(stage, to), usual);
    }

    private boolean answer(String fault, String usual) throws IOException {
      switch (fault) {
        case AS_USUAL -> say(usual);
        case DROP -> throw new Dropped();
        case SILENCE -> {
          line();
          throw new Dropped();
        }
        default -> {
          say(fault);
          isOver = fault.startsWith("421");
        }
      }
      return fault.isEmpty();
    }

    private void say(String line) throws IOException {
      client.getOutputStream().write((line + "\r\n").getBytes(StandardCharsets.US_ASCII));
      client.getOutputStream().flush();
    }

    /** The next line; empty when the client has gone. */
    private Optional<String> line() throws IOException {
      ByteArrayOutputStream line = new ByteArrayOutputStream();
      int next = in.read();
      while (next >= 0 && next != '\n') {
        line.write(next);
        next = in.read();
      }
      String text = line.toString(StandardCharsets.ISO_8859_1);
      return next < 0 ? Optional.empty() : Optional.of(text.substring(0, text.length() - 1));
    }
  }
}
