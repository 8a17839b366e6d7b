package withers.report.watch;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Supplier;
import withers.workspace.WorkspacePaths;
import withers.yaml.ConfigException;
import withers.yaml.ConfigProblem;
import withers.yaml.Place;

/**
 * Answers whoever watches, by HTTP: {@code /livez}, {@code /readyz} and {@code /metrics}. It takes
 * GET and HEAD alone, and changes nothing.
 */
public final class WatchServer implements AutoCloseable {
  private static final String PLAIN = "text/plain; charset=utf-8";
  private static final String METRICS = "text/plain; version=0.0.4; charset=utf-8";
  private static final int DONE = 200;
  private static final int NO_SUCH_PAGE = 404;
  private static final int NO_SUCH_METHOD = 405;
  private static final int NOT_NOW = 503;

  /** What is answered. */
  private record Page(int code, String type, String text) {}

  private final HttpServer server;

  private WatchServer(HttpServer server) {
    this.server = server;
  }

  /**
   * Starts answering. Close it to stop.
   *
   * @param port 0 for any that is free
   * @throws ConfigException when the address is not this machine's, or in use
   */
  public static WatchServer start(String address, int port, Pulse pulse, Metrics metrics) {
    try {
      HttpServer server = HttpServer.create(new InetSocketAddress(address, port), 0);
      serve(server, "/livez", () -> live(pulse));
      serve(server, "/readyz", () -> ready(metrics.failing()));
      serve(server, "/metrics", () -> new Page(DONE, METRICS, metrics.text()));
      server.start();
      return new WatchServer(server);
    } catch (IOException e) {
      throw new ConfigException(
          new ConfigProblem(
              Place.of(WorkspacePaths.SETTINGS),
              "watch",
              "Expected a free port of this machine under watch, but found none: %s, port %d"
                  .formatted(address, port),
              "name another, or end what uses it"));
    }
  }

  private static void serve(HttpServer server, String path, Supplier<Page> page) {
    server.createContext(
        path,
        exchange -> {
          try (exchange) {
            answer(exchange, path, page);
          }
        });
  }

  private static void answer(HttpExchange exchange, String path, Supplier<Page> page)
      throws IOException {
    String method = exchange.getRequestMethod();
    if (!List.of("GET", "HEAD").contains(method)) {
      write(exchange, new Page(NO_SUCH_METHOD, PLAIN, "Expected GET\n"));
    } else if (!exchange.getRequestURI().getPath().equals(path)) {
      write(exchange, new Page(NO_SUCH_PAGE, PLAIN, "Expected /livez, /readyz or /metrics\n"));
    } else {
      write(exchange, page.get());
    }
  }

  private static void write(HttpExchange exchange, Page page) throws IOException {
    byte[] bytes = page.text().getBytes(StandardCharsets.UTF_8);
    exchange.getResponseHeaders().set("Content-Type", page.type());
    exchange.getResponseHeaders().set("Cache-Control", "no-store");
    boolean isHead = exchange.getRequestMethod().equals("HEAD");
    exchange.sendResponseHeaders(page.code(), isHead ? -1 : bytes.length);
    if (!isHead) {
      exchange.getResponseBody().write(bytes);
    }
  }

  private static Page live(Pulse pulse) {
    return pulse.isAlive()
        ? new Page(DONE, PLAIN, "alive\n")
        : new Page(NOT_NOW, PLAIN, "the schedule has not woken up for long\n");
  }

  private static Page ready(List<String> failing) {
    return failing.isEmpty()
        ? new Page(DONE, PLAIN, "ready\n")
        : new Page(NOT_NOW, PLAIN, "failed last: %s\n".formatted(String.join(", ", failing)));
  }

  /** The port that it answers at. */
  public int port() {
    return server.getAddress().getPort();
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
