package withers.cli;

/**
 * Who runs the program, by the name that the system knows the account by.
 *
 * @param name as {@code whoami} says it
 */
public record Account(String name) {

  /** The account of this process. */
  public static Account ofThisProcess() {
    return new Account(System.getProperty("user.name", ""));
  }
}
