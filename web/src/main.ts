import './style/tokens.css';
import './style/base.css';
import { mount } from 'svelte';
import Page from './screens/Page.svelte';

const target = document.getElementById('page');
if (target) mount(Page, { target });

// Only where the browser trusts the address (TLS, or this very machine).
if (import.meta.env.PROD && 'serviceWorker' in navigator) {
  addEventListener('load', () => void navigator.serviceWorker.register('/sw.js').catch(() => undefined));
}
