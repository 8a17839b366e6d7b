package withers.workspace;

import java.net.InetAddress;
import java.net.UnknownHostException;

/** This process, for an operator who looks for it. */
public final class ThisProcess {
  private ThisProcess() {}

  /** Its number and its machine: "process 4711 on harbour". */
  public static String name() {
    return "process %d on %s".formatted(ProcessHandle.current().pid(), host());
  }

  private static String host() {
    try {
      return InetAddress.getLocalHost().getHostName();
    } catch (UnknownHostException nameless) {
      return "this host";
    }
  }
}
