package withers.slip;

/** Takes a sign and a packed number. */
@FunctionalInterface
public interface SignTaker {
  void take(long sign, long number);
}
