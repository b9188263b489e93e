package withy.cli;

import java.io.IOException;
import java.net.ProtocolFamily;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.channels.DatagramChannel;
import java.nio.channels.Pipe;
import java.nio.channels.ServerSocketChannel;
import java.nio.channels.SocketChannel;
import java.nio.channels.spi.AbstractSelector;
import java.nio.channels.spi.SelectorProvider;

/** A child process in which every socket is refused and told on standard error; it then answers one question after another. */
public final class Offline extends SelectorProvider {
    private static final String WORD = "a socket was asked for";

    static String word() {
        return WORD;
    }

    /** Each argument is a command line, its words apart by |. */
    public static void main(String[] args) throws IOException {
        Socket.setSocketImplFactory(() -> {
            throw refused();
        });
        ServerSocket.setSocketFactory(() -> {
            throw refused();
        });
        if (args[0].equals("ask-for-one")) {
            SocketChannel.open();
        }
        for (String line : args) {
            Terminal.Shown shown = new Terminal().run(line.split("\\|", -1));
            System.out.println(shown.code() + " " + line);
        }
    }

    private static IllegalStateException refused() {
        System.err.println(WORD);
        new Throwable().printStackTrace();
        return new IllegalStateException(WORD);
    }

    @Override
    public DatagramChannel openDatagramChannel() {
        throw refused();
    }

    @Override
    public DatagramChannel openDatagramChannel(ProtocolFamily family) {
        throw refused();
    }

    @Override
    public Pipe openPipe() {
        throw refused();
    }

    @Override
    public AbstractSelector openSelector() {
        throw refused();
    }

    @Override
    public ServerSocketChannel openServerSocketChannel() {
        throw refused();
    }

    @Override
    public SocketChannel openSocketChannel() {
        throw refused();
    }
}
