// While something is worked out the page looks again by itself; without JavaScript its head says so.

setTimeout(() => location.reload(), 2000);
