import '@flathead/solver/study-worker';
