package tramontane.desktop.internal.work;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import tramontane.desktop.Jobs;

class JobListTest {

    private final BlockingQueue<Runnable> ui = new LinkedBlockingQueue<>();
    private final List<String> failures = new ArrayList<>();
    private final JobList jobs = new JobList(ui::add, (sentence, cause) -> failures.add(sentence));

    @AfterEach
    void end() {
        jobs.close();
    }

    private void onUi() throws InterruptedException {
        Runnable next = ui.poll(10, TimeUnit.SECONDS);
        assertTrue(next != null, "something was to come back to the UI thread");
        next.run();
    }

    @Test
    void whatComesOutComesBackOnTheUiThread() throws InterruptedException {
        List<Integer> got = new ArrayList<>();
        Jobs.Job job = jobs.start("adding", watch -> {
            watch.progress(0.5, "half");
            return 2 + 3;
        }, got::add);
        onUi();
        assertEquals(List.of(5), got);
        assertEquals(Jobs.State.DONE, job.state());
        assertEquals(1, job.fraction());
    }

    @Test
    void aJobThatThrowsIsSaidAndHarmsNobody() throws InterruptedException {
        Jobs.Job job = jobs.start("dividing", watch -> 1 / Integer.parseInt("0"), value -> failures.add("came back"));
        onUi();
        assertEquals(List.of("The job \"dividing\" failed: / by zero."), failures);
        assertEquals(Jobs.State.FAILED, job.state());
    }

    @Test
    void aStoppedJobGivesNothing() throws InterruptedException {
        CountDownLatch begun = new CountDownLatch(1);
        List<String> got = new ArrayList<>();
        Jobs.Job job = jobs.start("waiting", watch -> {
            begun.countDown();
            while (!watch.cancelled()) {
                Thread.onSpinWait();
            }
            return "late";
        }, got::add);
        begun.await();
        assertEquals(List.of(job), jobs.list());
        job.cancel();
        onUi();
        assertEquals(List.of(), got);
        assertEquals(Jobs.State.CANCELLED, job.state());
    }

    @Test
    void quietJobsAreNotListed() throws InterruptedException {
        jobs.quietly(watch -> 1, value -> { });
        onUi();
        assertEquals(List.of(), jobs.list());
        assertNull(ui.poll());
    }

    @Test
    void runningOnesComeFirstAndOldOnesGo() throws InterruptedException {
        CountDownLatch end = new CountDownLatch(1);
        Jobs.Job running = jobs.start("first and last", watch -> {
            end.await();
            return 1;
        }, value -> { });
        for (int i = 0; i < 40; i++) {
            jobs.start("short " + i, watch -> 1, value -> { });
            onUi();
        }
        assertEquals(running, jobs.list().getFirst());
        assertTrue(jobs.list().size() <= 23, () -> "listed " + jobs.list().size());
        end.countDown();
        onUi();
    }
}
